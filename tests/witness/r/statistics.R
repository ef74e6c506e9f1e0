# An independent witness for the statistics: base R and the package survival work out the same cases.
#
# Writes cases.csv beside this file; statistics.test.ts compares our functions with it and needs no R.
# Run by: npm run witness
#
# A case is a line: function, arguments (separated by "|", cells by blanks), how near, expected cells by row.
# A blank cell is written NA.

library(survival)

arguments <- commandArgs(FALSE)
here <- dirname(sub("^--file=", "", arguments[grep("^--file=", arguments)]))
set.seed(20261125)

digits <- function(x) ifelse(is.na(x) | is.infinite(x), "NA", formatC(x, digits = 15, format = "g", width = 1))
cells <- function(x) paste(if (is.character(x)) x else digits(x), collapse = " ")
lines <- character()
case <- function(name, args, within, expected) {
  row <- c(name, paste(vapply(args, cells, ""), collapse = "|"), format(within), cells(expected))
  lines <<- c(lines, paste(row, collapse = ","))
}

# ---- lives -------------------------------------------------------------------------------------------------------

lives <- function(n, failing, tied = TRUE) {
  days <- rweibull(n, shape = runif(1, 0.7, 3), scale = runif(1, 50, 400))
  days <- if (tied) pmax(1, ceiling(days / 10) * 10) else days
  list(days = days, failed = as.numeric(runif(n) < failing))
}
lists <- list(
  list(days = c(9, 3, 5, 3, 12, 5, 20), failed = c(1, 1, 0, 1, 0, 1, 1)),
  list(days = c(6, 6, 6, 6, 7, 9, 10, 10, 11, 13, 16, 17, 19, 20, 22, 23, 25, 32, 32, 34, 35),
       failed = c(1, 1, 1, 0, 1, 0, 1, 0, 0, 1, 1, 0, 0, 0, 1, 1, 0, 0, 0, 0, 0)),
  list(days = 1:8, failed = rep(1, 8)),
  list(days = 1:8, failed = c(1, 1, 1, 1, 0, 0, 0, 0)),
  list(days = c(30, 30, 30, 60), failed = c(1, 1, 1, 0)),
  list(days = 42, failed = 1),
  list(days = c(100, 100, 100), failed = c(1, 1, 1)),
  list(days = c(0.001, 0.002, 1000000, 5e8), failed = c(1, 0, 1, 1)),
  list(days = c(0.1 + 0.2, 0.3, 0.5), failed = c(1, 1, 0))
)
for (n in c(2, 5, 12, 40, 150)) for (failing in c(0.3, 0.7, 1)) {
  lists <- c(lists, list(lives(n, failing)), list(lives(n, failing, tied = FALSE)))
}
lists <- Filter(function(x) sum(x$failed) > 0, lists)

for (x in lists) for (level in if (length(x$days) < 100) c(0.8, 0.95) else 0.95) {
  fit <- survfit(Surv(days, failed) ~ 1, data = x, conf.type = "log-log", conf.int = level)
  table <- summary(fit, times = fit$time[fit$n.event > 0])
  rows <- rbind(table$time, table$n.risk, table$n.event, table$surv, table$lower, table$upper)
  case("LIFETABLE", list(x$days, x$failed, level), 1e-9, as.vector(rows))
  shares <- c(0.1, 0.25, 0.5, 0.75, 0.9, 1)
  day <- quantile(fit, shares)
  case("LIFEQUANTILE", list(x$days, x$failed, shares, level), 1e-9, as.vector(rbind(day$quantile, day$lower, day$upper)))
}

for (groups in 2:5) for (n in c(8, 30, 100)) for (again in 1:2) {
  x <- lives(n, 0.7)
  group <- sample(letters[seq_len(groups)], n, replace = TRUE)
  if (length(unique(group)) < 2 || sum(x$failed) < 2) next
  test <- survdiff(Surv(x$days, x$failed) ~ group)
  free <- sum(tapply(test$exp, seq_along(test$exp), sum) > 0) - 1
  p <- pchisq(test$chisq, free, lower.tail = FALSE)
  case("LIFECOMPARE", list(x$days, x$failed, group), 1e-8, c(test$chisq, free, p))
}

for (x in lists) {
  if (length(unique(x$days[x$failed == 1])) < 2 || min(x$days) < 0.01 || isTRUE(all.equal(x$days[1], x$days[2]))) next
  control <- survreg.control(rel.tolerance = 1e-14, maxiter = 500)
  fit <- survreg(Surv(days, failed) ~ 1, data = x, dist = "weibull", control = control)
  error <- sqrt(diag(vcov(fit)))
  for (level in if (length(x$days) < 100) c(0.9, 0.95) else 0.9) {
    z <- qnorm((1 + level) / 2)
    shape <- exp(-log(fit$scale) + c(0, -z, z) * error[2])
    scale <- exp(coef(fit) + c(0, -z, z) * error[1])
    case("LIFEWEIBULL", list(x$days, x$failed, level), 1e-6, c(shape, scale))
    if (sum(x$failed) < 10) next
    risks <- c(0.01, 0.1, 0.5)
    day <- predict(fit, newdata = data.frame(row.names = 1), type = "uquantile", p = risks, se.fit = TRUE)
    low <- day$fit - qnorm(level) * day$se.fit
    case("FAILBY", list(x$days, x$failed, risks, level), 1e-6, as.vector(rbind(exp(day$fit), exp(low), sum(x$failed))))
  }
}

# ---- one person against the caseload -----------------------------------------------------------------------------

# Marginal likelihood of the gamma's shape a and rate b; for each a the best mean, then the root of the slope in a.
shared <- function(x, t) {
  best.mean <- function(a) exp(uniroot(function(m) sum((x - exp(m) * t) / (1 + exp(m) * t / a)),
                                       log(sum(x) / sum(t)) + c(-8, 8), tol = 1e-14)$root)
  height <- function(log.a) sum(dnbinom(x, size = exp(log.a), mu = best.mean(exp(log.a)) * t, log = TRUE))
  grid <- seq(-6, 12, 0.25)
  heights <- vapply(grid, height, 0)
  top <- which.max(heights)
  if (sum(dpois(x, sum(x) / sum(t) * t, log = TRUE)) >= max(heights)) return(NULL)
  slope <- function(log.a) {
    a <- exp(log.a)
    b <- a / best.mean(a)
    sum(digamma(a + x) - digamma(a) + log(b / (b + t)))
  }
  a <- exp(uniroot(slope, grid[top] + c(-0.3, 0.3), extendInt = "yes", tol = 1e-13)$root)
  list(a = a, b = a / best.mean(a))
}
for (people in c(3, 12, 60)) for (unlike in c(0.2, 0.8, 3)) {
  devices <- sample(1:6, people, replace = TRUE)
  ids <- rep(paste0("P", seq_len(people)), devices)
  rate <- rep(rgamma(people, 1 / unlike, 1 / unlike) / 150, devices)
  life <- ceiling(rexp(length(ids), rate))
  days <- pmin(180, life)
  failed <- as.numeric(life <= 180)
  if (sum(failed) == 0) next
  x <- as.vector(tapply(failed, factor(ids, unique(ids)), sum))
  t <- as.vector(tapply(days, factor(ids, unique(ids)), sum))
  prior <- shared(x, t)
  # No spread between people: our function says that it cannot be told.
  if (is.null(prior)) next
  for (one in seq_len(min(people, if (people > 20) 2 else 4))) {
    expected <- c(prior$a + x[one], qgamma(c(0.05, 0.95), prior$a + x[one])) / (prior$b + t[one]) / (prior$a / prior$b)
    case("WEARRATIO", list(paste0("P", one), ids, days, failed), 1e-5, expected)
  }
}

# ---- rates and stock ---------------------------------------------------------------------------------------------

for (events in c(0, 1, 3, 10, 57, 400, 12345)) for (level in c(0.8, 0.95, 0.999)) {
  days <- round(runif(1, 1, 90000))
  limits <- poisson.test(events, days, conf.level = level)$conf.int
  case("RATE", list(events, days, 1000, level), 1e-9, 1000 * c(events / days, limits))
}
for (a in c(0, 1, 4, 25, 300)) for (b in c(0, 1, 7, 40, 1000)) {
  if (a + b == 0) next
  days <- round(runif(2, 1, 90000))
  test <- poisson.test(c(a, b), days)
  case("RATERATIO", list(a, days[1], b, days[2]), 1e-6, c(test$estimate, test$conf.int, test$p.value))
}
# A size that is used is never left without one.
for (used in c(0.2, 1, 3.5, 12, 80, 2000)) for (service in c(0.5, 0.8, 0.95, 0.99, 0.9999)) {
  wait <- sample(1:60, 2)
  case("STOCKLEVEL", list(used, wait[1], wait[2], service), 0,
       max(1, qpois(service, used * sum(wait) * 12 / 365.25)))
}

for (again in 1:6) {
  days <- round(runif(sample(3:20, 1), 200, 3000))
  events <- rpois(length(days), days * runif(1, 0.0002, 0.01))
  centre <- sum(events) / sum(days)
  limits <- rbind(qpois(0.00135, centre * days), qpois(1 - 0.00135, centre * days))
  # The signal is a word: NA here.
  rows <- rbind(events / days, centre, limits[1, ] / days, limits[2, ] / days) * 1000
  case("RATECHART", list(events, days), 1e-12, as.vector(rbind(rows, NA)))
}

heading <- c(
  paste0("# Written by statistics.R with ", R.version.string, ", survival ", packageVersion("survival")),
  "function,arguments,within,expected"
)
writeLines(c(heading, lines), file.path(here, "cases.csv"))
cat(length(lines), "cases\n")
