/*
 * Makes reference.json: rectangular pieces of food heated and frozen by the enthalpy method, independent of the
 * library's own solver: even cells, conductivity as the mean of two neighbours, stages of Runge-Kutta-Legendre (RKL2:
 * Meyer C.D., Balsara D.S., Aslam T.D. 2012, Monthly Notices of the Royal Astronomical Society 422:2102-2115), another
 * language. Each case is solved on two grids, finer by about the root of two, and carried on to no cell width with its
 * square. Thaw times go in stairs with the cells that thaw last: they are the mean of three grids close to each other,
 * solved with Kirchhoff's potentials, which settle sooner.
 * Run: cc -O3 -march=native -ffast-math make.c -o make -lm && ./make > reference.json   (about ten minutes)
 */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

/* SI; water that can freeze times the heat of fusion in A */
typedef struct { const char *name; double rho, cu, cf, ku, kf, tf, A; } Food;
static const Food FOODS[] = {
  {"lean", 1050, 3500, 2000, 0.49, 1.5, -1, (0.735 - 0.087) * 333600},
  {"low freezing point", 1090, 3000, 2000, 0.4, 0.8, -2.6, 147e3},
};
static Food food;

static double enthalpy(double t) { return t >= food.tf ? food.cu * (t - food.tf) : food.cf * (t - food.tf) - food.A * (1 - food.tf / t); }
static inline double temperature(double h) {
  double below = h < 0 ? h : 0, b = food.cf * food.tf + food.A + below;
  double frozen = (b - sqrt(b * b - 4 * food.cf * food.A * food.tf)) / (2 * food.cf);
  return h >= 0 ? food.tf + h / food.cu : frozen;
}
static inline double potential(double t) {
  double below = t < food.tf ? t : food.tf;
  double frozen = food.kf * (below - food.tf) + (food.ku - food.kf) * food.tf * log(below / food.tf);
  return t >= food.tf ? food.ku * (t - food.tf) : frozen;
}
static inline double conductivity(double t) {
  double below = t < food.tf ? t : food.tf;
  return t >= food.tf ? food.ku : food.kf + (food.ku - food.kf) * food.tf / below;
}

/* an eighth of the piece, middle first: x is the width, y the length, z the thickness */
static int nx, ny, nz, boils;
static int potentials;
static double dx, dy, dz, film, air, *T, *K, *P;

/* heat through one outer face for each square metre; a face that boils is held at 100 degC and sheds the rest */
static inline double face(double t, double k, double d) {
  double q = (air - t) / (1 / film + d / 2 / k);
  return boils && air > t && t + q * d / 2 / k > 100 ? 2 * k / d * (100 - t) : q;
}

/* between two cells, twice the mean conductivity times the difference of temperatures, or the same by potentials */
static inline double flow(int one, int other) {
  return potentials ? 2 * (P[other] - P[one]) : (K[one] + K[other]) * (T[other] - T[one]);
}

static void rates(const double *h, double *f) {
  int n = nx * ny * nz;
  if (potentials) for (int i = 0; i < n; i++) P[i] = potential(temperature(h[i]));
  for (int i = 0; i < n; i++) { T[i] = temperature(h[i]); K[i] = conductivity(T[i]); f[i] = 0; }
  double rx = 0.5 / (food.rho * dx * dx), ry = 0.5 / (food.rho * dy * dy), rz = 0.5 / (food.rho * dz * dz);
  for (int k = 0; k < nz; k++)
    for (int j = 0; j < ny; j++) {
      int r = nx * (j + ny * k), e = r + nx - 1;
      for (int i = r; i < e; i++) { double q = rx * flow(i, i + 1); f[i] += q; f[i + 1] -= q; }
      if (j + 1 < ny) for (int i = r; i <= e; i++) { double q = ry * flow(i, i + nx); f[i] += q; f[i + nx] -= q; }
      if (k + 1 < nz) for (int i = r; i <= e; i++) { int o = i + nx * ny; double q = rz * flow(i, o); f[i] += q; f[o] -= q; }
      f[e] += face(T[e], K[e], dx) / (food.rho * dx);
      if (j + 1 == ny) for (int i = r; i <= e; i++) f[i] += face(T[i], K[i], dy) / (food.rho * dy);
      if (k + 1 == nz) for (int i = r; i <= e; i++) f[i] += face(T[i], K[i], dz) / (food.rho * dz);
    }
}

static double core(const double *h) {
  double c = temperature(h[0]);
  return c - (temperature(h[1]) - c) / 8 - (temperature(h[nx]) - c) / 8 - (temperature(h[nx * ny]) - c) / 8;
}
/* the middle on straight lines, as a front leaves them that closes in from all sides */
static double wedge(const double *h) {
  double c = temperature(h[0]);
  return c - (temperature(h[1]) - c) / 2 - (temperature(h[nx]) - c) / 2 - (temperature(h[nx * ny]) - c) / 2;
}
static double mean(const double *h) {
  double sum = 0;
  for (int i = 0; i < nx * ny * nz; i++) sum += temperature(h[i]);
  return sum / (nx * ny * nz);
}

#define NONE -1e9
#define STAGES 17
#define TARGETS 4
/* what each target is of: the wedge, the core twice, the mean */
static double (*const READ[TARGETS])(const double *) = {wedge, core, core, mean};
static const char *const NAME[TARGETS] = {"thawed", "coreC", "coreC", "meanC"};
/* seconds at which the targets are passed */
static void solve(const double *sides, double start, const double *target, int cells, double *seconds) {
  /* cells of the sides: as the thickness where short, up to three times as wide where long */
  double ratio[3]; int count[3];
  for (int a = 0; a < 3; a++) { ratio[a] = sides[a] / sides[0]; count[a] = (int)round(cells * ratio[a] / fmin(3, fmax(1, 0.6 * ratio[a]))); }
  nz = count[0]; nx = count[1]; ny = count[2];
  dz = sides[0] / 2e3 / nz; dx = sides[1] / 2e3 / nx; dy = sides[2] / 2e3 / ny;
  int n = nx * ny * nz;
  double *y = malloc(n * 8), *one = malloc(n * 8), *two = malloc(n * 8), *f0 = malloc(n * 8), *f = malloc(n * 8);
  T = malloc(n * 8); K = malloc(n * 8); P = malloc(n * 8);
  for (int i = 0; i < n; i++) y[i] = enthalpy(start);
  double fastest = 1.25 * food.kf / (food.rho * food.cf);
  double step = 0.9 / (2 * fastest * (1 / dx / dx + 1 / dy / dy + 1 / dz / dz)) * (STAGES * STAGES + STAGES - 2) / 4.0;
  double a[STAGES + 1], b[STAGES + 1], w = 4.0 / (STAGES * STAGES + STAGES - 2);
  for (int j = 0; j <= STAGES; j++) { b[j] = j < 2 ? 1.0 / 3 : (j * j + j - 2.0) / (2.0 * j * (j + 1)); a[j] = 1 - b[j]; }
  double time = 0, before[TARGETS];
  int left = 0;
  for (int i = 0; i < TARGETS; i++) { seconds[i] = NONE; before[i] = READ[i](y); if (target[i] != NONE) left++; }
  while (left > 0 && time < 1e6) {
    rates(y, f0);
    for (int i = 0; i < n; i++) { two[i] = y[i]; one[i] = y[i] + b[1] * w * step * f0[i]; }
    for (int j = 2; j <= STAGES; j++) {
      double mu = (2.0 * j - 1) / j * b[j] / b[j - 1], nu = -(j - 1.0) / j * b[j] / b[j - 2], m = mu * w * step, g = -a[j - 1] * m;
      rates(one, f);
      for (int i = 0; i < n; i++) { double next = mu * one[i] + nu * two[i] + (1 - mu - nu) * y[i] + m * f[i] + g * f0[i]; two[i] = one[i]; one[i] = next; }
    }
    double *swap = y; y = one; one = swap;
    time += step;
    for (int i = 0; i < TARGETS; i++) {
      double now = READ[i](y);
      if (target[i] != NONE && seconds[i] == NONE && (before[i] < target[i]) != (now < target[i])) {
        seconds[i] = time - step + step * (target[i] - before[i]) / (now - before[i]);
        left--;
      }
      before[i] = now;
    }
  }
  free(y); free(one); free(two); free(f0); free(f); free(T); free(K); free(P);
}

static int first;
static void print(const char *column, double value, double seconds, double change) {
  printf("%s{\"column\": \"%s\", \"valueC\": %g, \"seconds\": %.3f, \"change\": %.5f}", first ? "" : ", ", column, value, seconds, change);
  first = 0;
}
static int pieces = 0;
static void piece(int foodAt, double thickness, double width, double length, double h, int heats, int coarse, int fine) {
  food = FOODS[foodAt];
  double sides[3] = {thickness, width, length}, start = heats ? -18 : 5;
  double heating[TARGETS] = {NONE, 40, 74, NONE}, freezing[TARGETS] = {NONE, -5, -10, -4}, thaw[TARGETS] = {food.tf, NONE, NONE, NONE};
  const double *target = heats ? heating : freezing;
  film = h; air = heats ? 204 : -18; boils = heats;
  printf("%s  {\"food\": \"%s\", \"way\": \"%s\", \"thicknessMm\": %g, \"widthMm\": %g, \"lengthMm\": %g, \"coefficientWm2K\": %g, \"cells\": [%d, %d], \"times\": [", pieces++ ? ",\n" : "", food.name, heats ? "heating" : "freezing", thickness, width, length, h, coarse, fine);
  first = 1;
  double rough[TARGETS], good[TARGETS];
  if (heats) {
    double sum = 0, least = 1e9, most = 0;
    potentials = 1;
    for (int grid = 0; grid < 3; grid++) {
      solve(sides, start, thaw, (int)round(fine * (1 + 0.07 * grid)), good);
      sum += good[0]; least = fmin(least, good[0]); most = fmax(most, good[0]);
    }
    potentials = 0;
    print("thawed", food.tf, sum / 3, (most - least) / least);
  }
  solve(sides, start, target, coarse, rough);
  solve(sides, start, target, fine, good);
  double share = 1 / ((double)fine * fine / coarse / coarse - 1);
  for (int i = 0; i < TARGETS; i++) if (target[i] != NONE) print(NAME[i], target[i], good[i] + share * (good[i] - rough[i]), good[i] / rough[i] - 1);
  printf("]}");
  fflush(stdout);
}

int main(void) {
  static const double SHAPES[][2] = {{1, 1}, {2, 2}, {3.75, 3.75}, {1, 10}, {10, 10}}, SCALES[][2] = {{6, 10}, {12, 40}, {25, 100}};
  static const int FINE[] = {48, 40, 34, 40, 28};
  printf("{\n \"source\": \"numerical: enthalpy finite volumes on even grids, RKL2 stages (Meyer, Balsara & Aslam 2012), carried on to no cell width; thaw times the mean of three grids\",\n \"how\": \"make.c beside this file; heating from -18 degC in 204 degC air with faces that boil at 100 degC, freezing from 5 degC in -18 degC air\",\n \"units\": \"mm, W/(m2 K), degC, s; change: relative change from the coarser to the finer grid, of thaw times from the earliest to the latest of the three\",\n \"foods\": {\n");
  for (int i = 0; i < 2; i++) printf("  \"%s\": {\"densityKgM3\": %g, \"waterFraction\": 0.735, \"freezingPointC\": %g, \"latentKJkg\": %.10g, \"thawedSpecificHeatKJkgK\": %g, \"frozenSpecificHeatKJkgK\": %g, \"thawedConductivityWmK\": %g, \"frozenConductivityWmK\": %g}%s\n", FOODS[i].name, FOODS[i].rho, FOODS[i].tf, FOODS[i].A / 1000, FOODS[i].cu / 1000, FOODS[i].cf / 1000, FOODS[i].ku, FOODS[i].kf, i ? "" : ",");
  printf(" },\n \"pieces\": [\n");
  for (int heats = 1; heats >= 0; heats--) {
    piece(0, 12, 45, 45, 40, heats, 24, 34);
    piece(0, 14, 140, 140, 25, heats, 17, 24);
    piece(0, 14, 27, 70, 40, heats, 24, 34);
    piece(1, 12, 24, 36, 40, heats, 24, 34);
    for (int scale = 0; scale < 3; scale++)
      for (int shape = 0; shape < 5; shape++) {
        if (scale == 1 && shape == 2) continue;
        double t = SCALES[scale][0];
        int fine = heats ? FINE[shape] * (scale == 0 ? 0.6 : 1) : scale == 0 ? 18 : 24;
        piece(0, t, t * SHAPES[shape][0], t * SHAPES[shape][1], SCALES[scale][1], heats, (int)round(fine / 1.41), fine);
      }
  }
  printf("\n ]\n}\n");
  return 0;
}
