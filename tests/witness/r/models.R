# Models that both scripts fit: a Weibull curve, a Weibull hazard with gamma frailty, and the age of least cost.

# Own marginal likelihood, by optim and then Newton on numerical slopes, at each spread; averaged over the spreads.
frailty.fit <- function(ids, days, failed) {
  who <- factor(ids, unique(ids))
  n <- as.vector(tapply(failed, who, sum))
  at <- function(sd) {
    a <- 1 / sd^2
    hazards <- function(p) as.vector(tapply((days / exp(p[2]))^exp(p[1]), who, sum))
    height <- function(p) {
      density <- sum(failed * (p[1] - p[2] + (exp(p[1]) - 1) * (log(days) - p[2])))
      density + sum(lgamma(a + n) - lgamma(a) + a * log(a) - (a + n) * log(a + hazards(p)))
    }
    p <- c(0, mean(log(days)))
    for (again in 1:4) p <- optim(p, function(p) -height(p), control = list(reltol = 1e-15, maxit = 2000))$par
    e <- 1e-4
    for (again in 1:6) {
      step <- function(x, y) height(p + c(x, y))
      slope <- c(step(e, 0) - step(-e, 0), step(0, e) - step(0, -e)) / (2 * e)
      mixed <- (step(e, e) - step(e, -e) - step(-e, e) + step(-e, -e)) / (4 * e^2)
      bend <- matrix(c(step(e, 0) - 2 * step(0, 0) + step(-e, 0), 0, 0, step(0, e) - 2 * step(0, 0) + step(0, -e)) / e^2, 2)
      p <- p - solve(bend + matrix(c(0, mixed, mixed, 0), 2), slope)
    }
    list(a = a, shape = exp(p[1]), scale = exp(p[2]), height = height(p) + dnorm(sd, 0, 0.75, log = TRUE), hazards = hazards(p))
  }
  points <- lapply(seq(0.02, 1.6, length = 20), at)
  heights <- vapply(points, `[[`, 0, "height")
  weights <- exp(heights - max(heights))
  list(points = points, weights = weights / sum(weights), failures = n, devices = as.vector(table(who)))
}
frailty.person <- function(fit, i, risk, level) {
  part <- function(name) vapply(fit$points, `[[`, 0, name)
  a <- part("a") + fit$failures[i]
  b <- part("a") + vapply(fit$points, function(p) p$hazards[i], 0)
  tail <- (1 - level) / 2
  limit <- function(q) uniroot(function(z) sum(fit$weights * pgamma(z, a, b)) - q, c(1e-12, 60), tol = 1e-14)$root
  wear <- c(sum(fit$weights * a / b), limit(tail), limit(1 - tail))
  hazard <- function(t) (t / part("scale"))^part("shape")
  day <- function(survival) uniroot(function(t) sum(fit$weights * survival(hazard(t))) - (1 - risk), c(1e-4, 1e6), tol = 1e-11)$root
  days <- c(day(function(h) (1 + h / b)^-a), day(function(h) exp(-wear[3] * h)), day(function(h) exp(-wear[2] * h)))
  c(days, wear, fit$devices[i], fit$failures[i])
}

weibull.fit <- function(x) {
  control <- survreg.control(rel.tolerance = 1e-14, maxiter = 500)
  fit <- survreg(Surv(days, failed) ~ 1, data = x, dist = "weibull", control = control)
  list(shape = 1 / fit$scale, scale = unname(exp(coef(fit))), covariance = vcov(fit))
}
best.age <- function(shape, scale, ratio) {
  survival <- function(t) exp(-(t / scale)^shape)
  stay <- function(t) integrate(survival, 0, t, rel.tol = 1e-12)$value
  # The slope of the cost a day, without what does not change its sign.
  slope <- function(t) shape / scale * (t / scale)^(shape - 1) * stay(t) - (1 - survival(t)) - 1 / (ratio - 1)
  day <- uniroot(slope, c(scale * 1e-6, scale * 100), tol = 1e-12, maxiter = 5000)$root
  cycles <- 100 * 365.25 / stay(day)
  c(day, 1 - survival(day), survival(day) * cycles, (1 - survival(day)) * cycles)
}
