# Reference values for fits of times seen at checks, yes/no crispness, ordered scores, robust refits, influence and
# exact profile limits. Data are invented here, from a fixed seed. Run: Rscript make-reference.R > fit-reference.json
# Needs R with the packages survival and MASS (both come with R or Debian's r-cran-survival, r-cran-mass).
suppressMessages({library(survival); library(MASS)})
options(digits = 15)
num <- function(v) paste0("[", paste(ifelse(is.na(v), "null", ifelse(is.infinite(v), ifelse(v > 0, "\"Inf\"", "\"-Inf\""), formatC(v, digits = 15, format = "g"))), collapse = ","), "]")
str <- function(v) paste0("[", paste0("\"", v, "\"", collapse = ","), "]")
obj <- function(...) { l <- list(...); paste0("{", paste0("\"", names(l), "\":", unlist(l), collapse = ","), "}") }

set.seed(20)
## ---- times seen at checks -------------------------------------------------
n <- 60
thick <- rep(c(6, 9, 12, 16), each = 15)
setpoint <- rep(c(180, 190, 200), 20)
appliance <- rep(c("small", "large"), 30)
lp <- 0.35 + 0.85 * log(thick) - 0.004 * (setpoint - 190) + 0.12 * (appliance == "large")
true <- exp(lp + 0.12 * log(1 / runif(n) - 1) * -1)
lower <- floor(true / 2) * 2
upper <- lower + 2
lower[lower == 0] <- 0
stopped <- true > 20
lower[stopped] <- 20; upper[stopped] <- Inf
first <- true < 8 & seq_len(n) %% 3 == 0
upper[first] <- 8; lower[first] <- 0
seen <- seq_len(n) %% 7 == 0 & !stopped & !first
lower[seen] <- round(true[seen], 2); upper[seen] <- lower[seen]
d <- data.frame(thick, setpoint, appliance = factor(appliance, levels = c("small", "large")))
S <- Surv(ifelse(lower == 0, NA, lower), ifelse(is.infinite(upper), NA, upper), type = "interval2")
ctl <- survreg.control(rel.tolerance = 1e-13, maxiter = 200)
aft <- lapply(c(logLogistic = "loglogistic", weibull = "weibull", lognormal = "lognormal"), function(dist) {
  m <- survreg(S ~ log(thick) + setpoint + appliance, d, dist = dist, control = ctl)
  nd <- data.frame(thick = 10, setpoint = 195, appliance = factor("large", levels = c("small", "large")))
  q <- predict(m, nd, type = "uquantile", p = c(0.1, 0.5, 0.9), se.fit = TRUE)
  obj(coef = num(coef(m)), scale = num(m$scale), logLik = num(m$loglik[2]), cov = num(as.vector(vcov(m))),
      logQuantile = num(as.vector(q$fit)), logQuantileSe = num(as.vector(q$se.fit)))
})
one <- survreg(S ~ 1, d, dist = "loglogistic", control = ctl)
aft$interceptOnly <- obj(coef = num(coef(one)), scale = num(one$scale), logLik = num(one$loglik[1]), cov = num(as.vector(vcov(one))))

## ---- yes/no crispness -----------------------------------------------------
minutes <- rep(seq(8, 18, 2), each = 6)
crisp <- as.integer(runif(36) < plogis((minutes - 12.5) / 1.4))
g <- glm(crisp ~ minutes, binomial, control = glm.control(epsilon = 1e-14, maxit = 100))
dose <- function(p) { x <- dose.p(g, p = p); c(x, attr(x, "SE")) }
fieller <- function(p) { # roots of (a + b x - eta)^2 = z^2 var
  z <- qnorm(.975); V <- vcov(g); b <- coef(g); e <- qlogis(p)
  A <- b[2]^2 - z^2 * V[2, 2]; B <- 2 * ((b[1] - e) * b[2] - z^2 * V[1, 2]); C <- (b[1] - e)^2 - z^2 * V[1, 1]
  sort(as.numeric((-B + c(-1, 1) * sqrt(B^2 - 4 * A * C)) / (2 * A)))
}
thick2 <- rep(c(8, 12), 18)
g2 <- glm(crisp ~ minutes + thick2, binomial, control = glm.control(epsilon = 1e-14, maxit = 100))
logistic <- obj(minutes = num(minutes), crisp = num(crisp), thick = num(thick2), coef = num(coef(g)), se = num(sqrt(diag(vcov(g)))), deviance = num(deviance(g)),
  half = num(dose(.5)), ninety = num(dose(.9)), fiellerHalf = num(fieller(.5)), fiellerNinety = num(fieller(.9)),
  coef2 = num(coef(g2)), cov2 = num(as.vector(vcov(g2))), aic2 = num(AIC(g2)))

## ---- ordered panel scores -------------------------------------------------
m3 <- rep(seq(8, 20, 2), each = 8)
dryer <- rep(c("small", "large"), 28)
latent <- 0.45 * (m3 - 13) + 0.7 * (dryer == "large") + rlogis(56)
score <- cut(latent, c(-Inf, -2, 0, 1.5, Inf), labels = FALSE)
po <- polr(factor(score) ~ m3 + factor(dryer, levels = c("small", "large")), Hess = TRUE, control = list(reltol = 1e-16, maxit = 2000))
np <- predict(po, data.frame(m3 = 14, dryer = "large"), type = "probs")
ordinal <- obj(minutes = num(m3), dryer = str(dryer), score = num(score), coef = num(coef(po)), zeta = num(po$zeta),
  se = num(sqrt(diag(vcov(po)))), deviance = num(deviance(po)), probabilities = num(as.numeric(np)))

## ---- robust refits (cars with two spoiled trials) --------------------------
x <- cars$speed; y <- cars$dist; y[10] <- 120; y[30] <- 5
rob <- lapply(c(huber = "psi.huber", bisquare = "psi.bisquare"), function(psi) {
  m <- rlm(y ~ x, psi = get(psi), init = if (psi == "psi.bisquare") rlm(y ~ x, acc = 1e-13, maxit = 5000)$coefficients else "ls", acc = 1e-13, maxit = 5000)
  s <- summary(m)
  obj(coef = num(coef(m)), se = num(s$coefficients[, 2]), scale = num(m$s), weights = num(m$w))
})

## ---- influence and serial pattern (cars) ----------------------------------
l <- lm(dist ~ speed, cars)
r <- residuals(l)
infl <- obj(hat = num(hatvalues(l)), cook = num(cooks.distance(l)), rstudent = num(rstudent(l)),
  durbinWatson = num(sum(diff(r)^2) / sum(r^2)),
  slopeWithout = num(sapply(1:50, function(i) coef(lm(dist ~ speed, cars[-i, ]))[2])))

## ---- exact profile limits of Puromycin (treated) ---------------------------
p <- subset(Puromycin, state == "treated")
rssK <- function(K) { z <- p$conc / (K + p$conc); sum((p$rate - z * sum(z * p$rate) / sum(z * z))^2) }
best <- optimize(rssK, c(.03, .2), tol = 1e-14)
s2 <- best$objective / 10; lim <- best$objective + s2 * qf(.95, 1, 10)
rssV <- function(V) optimize(function(K) sum((p$rate - V * p$conc / (K + p$conc))^2), c(.01, .3), tol = 1e-13)$objective
root <- function(f, a, b) uniroot(function(v) f(v) - lim, c(a, b), tol = 1e-13)$root
prof <- obj(top = num(c(root(rssV, 170, 212), root(rssV, 213, 260))), half = num(c(root(rssK, .02, .064), root(rssK, .065, .15))))

cat("{\n\"citation\":\"", R.version.string, "; survival ", as.character(packageVersion("survival")), ", MASS ", as.character(packageVersion("MASS")), "\",\n", sep = "")
cat("\"howMade\":\"make-reference.R beside this file\",\n\"unit\":\"min, mm, C\",\n\"tolerance\":\"6 digits on estimates, 5 on standard errors, unless the test says why not\",\n")
cat("\"aft\":", obj(thick = num(thick), setpoint = num(setpoint), appliance = str(appliance), lower = num(lower), upper = num(upper),
  logLogistic = aft$logLogistic, weibull = aft$weibull, lognormal = aft$lognormal, interceptOnly = aft$interceptOnly), ",\n", sep = "")
cat("\"logistic\":", logistic, ",\n\"ordinal\":", ordinal, ",\n", sep = "")
cat("\"robust\":", obj(x = num(x), y = num(y), huber = rob$huber, bisquare = rob$bisquare), ",\n", sep = "")
cat("\"influence\":", infl, ",\n\"profile\":", prof, "\n}\n", sep = "")
