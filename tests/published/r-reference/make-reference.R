# Prints the numbers that r-reference.json holds for its nls, lm and glm fits, from R's own datasets.
# Run: Rscript make-reference.R. nls: central differences, tolerance 1e-8, so trusted to about 8 digits.
options(digits = 10)
control <- nls.control(tol = 1e-8, maxiter = 500, nDcentral = TRUE)
show <- function(name, m) {
  s <- summary(m)
  cat("\n==", name, "\n"); print(s$coefficients[, 1:2]); cat("sigma", s$sigma, "rss", sum(resid(m)^2), "AIC", AIC(m), "BIC", BIC(m), "\n")
}
treated <- subset(Puromycin, state == "treated"); untreated <- subset(Puromycin, state == "untreated")
mm <- function(d) nls(rate ~ Vm * conc / (K + conc), d, start = list(Vm = 200, K = 0.05), control = control)
show("puromycin_treated", mm(treated)); show("puromycin_untreated", mm(untreated))
print(confint(mm(treated)))
show("indometh_s1_biexp", nls(conc ~ A1 * exp(-exp(l1) * time) + A2 * exp(-exp(l2) * time), subset(Indometh, Subject == 1),
  start = list(A1 = 2, l1 = 0.5, A2 = 0.2, l2 = -1.5), control = control))
show("dnase1_logistic", nls(density ~ Asym / (1 + exp((xmid - log(conc)) / scal)), subset(DNase, Run == 1),
  start = list(Asym = 2, xmid = 1, scal = 1), control = control))
show("chick1_logistic", nls(weight ~ Asym / (1 + exp((xmid - Time) / scal)), subset(ChickWeight, Chick == 1),
  start = list(Asym = 900, xmid = 35, scal = 11), control = control))
show("loblolly301_asymp", nls(height ~ Asym + (R0 - Asym) * exp(-exp(lrc) * age), subset(Loblolly, Seed == 301),
  start = list(Asym = 95, R0 = -9, lrc = -3), control = control))
line <- lm(dist ~ speed, cars); quadratic <- lm(dist ~ speed + I(speed^2), cars)
show("cars_linear", line); print(predict(line, data.frame(speed = c(5, 10, 15, 25)), interval = "prediction"))
cat("press", sum((resid(line) / (1 - hatvalues(line)))^2), "\n")
show("cars_quadratic", quadratic); print(predict(quadratic, data.frame(speed = c(5, 15, 25)), interval = "prediction"))
show("mtcars_wt_hp", lm(mpg ~ wt + hp, mtcars))
cat("\n== lack of fit\n"); print(anova(line, lm(dist ~ factor(speed), cars)))
for (m in list(glm(am ~ wt, binomial, mtcars), glm(case ~ spontaneous + induced, binomial, infert),
               glm(cbind(ncases, ncontrols) ~ as.numeric(alcgp), binomial, esoph))) {
  cat("\n== glm\n"); print(summary(m)$coefficients[, 1:2]); cat("deviance", deviance(m), "AIC", AIC(m), "\n")
}
