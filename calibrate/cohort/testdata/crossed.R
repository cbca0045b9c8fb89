# A linear model with crossed effects, fitted by lme4 (Bates, Maechler, Bolker & Walker 2015,
# J Stat Softw 67(1), doi:10.18637/jss.v067.i01) for TestCrossedEffectsAsLme4 to agree with.
# Run in this folder: Rscript crossed.R writes crossed.csv (the data, invented) and
# crossed-lme4.csv (the answers, by restricted maximum likelihood).
library(lme4)
set.seed(20261125)
athletes <- 30; courses <- 14; n <- 260
editions <- 3
athlete <- sample(athletes, n, TRUE); course <- sample(courses, n, TRUE)
edition <- (course - 1) * editions + sample(editions, n, TRUE)
x <- round(rnorm(n) + 0.3 * (athlete / athletes), 3)
a <- rnorm(athletes, sd = 0.2); u <- rnorm(courses, sd = 0.08); v <- rnorm(courses * editions, sd = 0.04)
y <- round(1.5 + 0.12 * x + a[athlete] + u[course] + v[edition] + rnorm(n, sd = 0.06), 5)
d <- data.frame(athlete, course, edition, x, y)
write.csv(d, "crossed.csv", row.names = FALSE, quote = FALSE)
m <- lmer(y ~ x + (1 | athlete) + (1 | course) + (1 | edition), d, REML = TRUE,
  control = lmerControl(optimizer = "bobyqa", optCtrl = list(rhoend = 1e-10)))
sds <- as.data.frame(VarCorr(m)); value <- setNames(sds$sdcor, sds$grp)
out <- data.frame(
  name = c("athlete", "course", "edition", "noise", "intercept", "slope", paste0("course ", rownames(ranef(m)$course))),
  value = c(value["athlete"], value["course"], value["edition"], value["Residual"], fixef(m), ranef(m)$course[, 1]))
out$value <- sprintf("%.8f", out$value)
write.csv(out, "crossed-lme4.csv", row.names = FALSE, quote = FALSE)
print(packageVersion("lme4"))
