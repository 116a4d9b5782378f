# Made surfaces.json with R 4.2.2: Rscript surfaces.R > surfaces.json. Base R alone; the data are in the script, each with its source.
options(digits = 15)
r2 <- sqrt(2)
sets <- list(
  # Myers, Montgomery & Anderson-Cook, Response Surface Methodology, 3rd ed. 2009, Table 7.6, as R's package rsm prints it
  chemreact = list(
    x1 = (c(80, 80, 90, 90, 85, 85, 85, 85, 85, 85, 92.07, 77.93, 85, 85) - 85) / 5,
    x2 = (c(170, 180, 170, 180, 175, 175, 175, 175, 175, 175, 175, 175, 182.07, 167.93) - 175) / 5,
    block = rep(c("B1", "B2"), each = 7),
    y = c(80.5, 81.5, 82, 83.5, 83.9, 84.3, 84, 79.7, 79.8, 79.5, 78.4, 75.6, 78.5, 77)),
  # Oehlert, A First Course in Design and Analysis of Experiments, 2000, example 19.3: cakes, coded baking time and temperature, appeal
  cakes = list(
    x1 = c(-1, 1, -1, 1, 0, 0, 0, 1.414, -1.414, 0, 0, 0, 0, 0),
    x2 = c(-1, -1, 1, 1, 0, 0, 0, 0, 0, 1.414, -1.414, 0, 0, 0),
    block = rep(c("1", "2"), each = 7),
    y = c(3.89, 6.36, 7.65, 6.79, 8.36, 7.63, 8.12, 8.40, 5.38, 7.00, 4.51, 7.81, 8.44, 8.06)))
num <- function(v) paste0("[", paste(sprintf("%.12g", v), collapse = ", "), "]")
out <- sapply(names(sets), function(name) {
  d <- as.data.frame(sets[[name]])
  d$block <- factor(d$block)
  fit <- lm(y ~ x1 + x2 + I(x1 * x2) + I(x1^2) + I(x2^2) + block, d)
  b <- coef(fit)
  B <- matrix(c(b[5], b[4] / 2, b[4] / 2, b[6]), 2)
  xs <- -0.5 * solve(B, b[2:3])
  e <- eigen(B)
  V <- vcov(fit)
  se <- apply(e$vectors, 2, function(w) { g <- c(0, 0, 0, w[1] * w[2], w[1]^2, w[2]^2, 0); sqrt(drop(t(g) %*% V %*% g)) })
  full <- lm(y ~ factor(paste(x1, x2, block)), d)
  rss <- deviance(fit); pe <- deviance(full)
  dfl <- df.residual(fit) - df.residual(full)
  f <- ((rss - pe) / dfl) / (pe / df.residual(full))
  at0 <- c(1, xs, xs[1] * xs[2], xs[1]^2, xs[2]^2, 0.5)
  # the slopes at the middle against being zero: Box & Hunter's statistic there
  D <- rbind(c(0, 1, 0, 0, 0, 0, 0), c(0, 0, 1, 0, 0, 0, 0))
  s0 <- D %*% b
  against <- drop(t(s0) %*% solve(D %*% V %*% t(D)) %*% s0)
  # highest point at radius 1 by a fine search over the angle
  h <- function(a) b[2] * cos(a) + b[3] * sin(a) + b[4] * cos(a) * sin(a) + b[5] * cos(a)^2 + b[6] * sin(a)^2
  a0 <- seq(0, 2 * pi, length.out = 20001); a1 <- a0[which.max(h(a0))]
  a <- optimize(h, a1 + c(-1e-3, 1e-3), maximum = TRUE, tol = 1e-12)$maximum
  sprintf('  "%s": { "x1": %s, "x2": %s, "block": ["%s"], "y": %s, "coef": %s, "se": %s, "df": %d, "stationary": %s, "height": %.12g, "heightSe": %.12g, "eigen": %s, "eigenSe": %s, "lackOfFitF": %.12g, "lackOfFitP": %.12g, "pureDf": %d, "againstMiddle": %.12g, "ridge1": %s }',
    name, num(d$x1), num(d$x2), paste(d$block, collapse = '", "'), num(d$y), num(b), num(sqrt(diag(V))), df.residual(fit), num(xs),
    sum(at0 * b), sqrt(drop(t(at0) %*% V %*% at0)), num(e$values), num(se), f, pf(f, dfl, df.residual(full), lower.tail = FALSE), df.residual(full), against, num(c(cos(a), sin(a))))
})
cat("{\n", paste(out, collapse = ",\n"), "\n}\n", sep = "")
