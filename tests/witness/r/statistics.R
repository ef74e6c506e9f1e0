# An independent witness for the statistics: base R and the package survival work out the same cases.
#
# Writes cases.csv beside this file; statistics.test.ts compares our functions with it and needs no R.
# Run by: npm run witness
#
# A case is a line: function, arguments (separated by "|", cells by blanks), how near, expected cells by row.
# A blank cell is written NA, a word with _ for its blanks.

library(survival)

arguments <- commandArgs(FALSE)
here <- dirname(sub("^--file=", "", arguments[grep("^--file=", arguments)]))
source(file.path(here, "models.R"))
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

# ---- one person against the clinic: Weibull hazard with gamma frailty ------------------------------------------------

invented <- list(
  ids = rep(paste0("P", 1:6), c(4, 3, 4, 3, 3, 4)),
  days = c(40, 55, 62, 90, 180, 180, 120, 100, 180, 150, 30, 180, 160, 180, 75, 130, 180, 180, 180, 95, 20),
  failed = c(1, 1, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 1, 1, 0, 0, 0, 1, 0)
)
clinic <- function(people, shape, spread) {
  devices <- sample(2:6, people, replace = TRUE)
  ids <- rep(paste0("P", seq_len(people)), devices)
  factor <- rep(if (spread == 0) rep(1, people) else rgamma(people, 1 / spread, 1 / spread), devices)
  life <- pmax(1, ceiling(150 * (rexp(length(ids)) / pmax(factor, 1e-3))^(1 / shape)))
  list(ids = ids, days = pmin(180, life), failed = as.numeric(life <= 180))
}
kidney.list <- list(ids = paste0("K", kidney$id), days = kidney$time, failed = kidney$status)
clinics <- list(invented, kidney.list)
for (people in c(10, 40)) for (shape in c(0.9, 2, 4)) for (spread in c(0, 0.3, 1.5)) {
  clinics <- c(clinics, list(clinic(people, shape, spread)))
}
enough <- function(x) sum(x$failed) >= 8 && length(x$days) >= 20
for (x in Filter(enough, clinics)) {
  fit <- frailty.fit(x$ids, x$days, x$failed)
  for (one in 1:3) for (level in if (one == 1) c(0.5, 0.9) else 0.9) {
    person <- unique(x$ids)[one]
    risk <- c(0.1, 0.01, 0.5)[one]
    expected <- frailty.person(fit, one, risk, level)
    case("WEARRATIO", list(person, x$ids, x$days, x$failed, level), 1e-6, expected[4:6])
    case("FAILBYID", list(person, x$ids, x$days, x$failed, risk, level), 1e-6, expected)
  }
}

# ---- the clinic's curve: planned changes, unplanned ones to come, spares, lots ----------------------------------------

for (x in Filter(enough, clinics)) {
  fit <- weibull.fit(x)
  if (fit$shape > 1.2) for (ratio in c(2, 5, 20)) for (level in c(0.8, 0.9)) {
    answer <- best.age(fit$shape, fit$scale, ratio)
    at <- function(intercept, log.scale) log(best.age(exp(-log.scale), exp(intercept), ratio)[1])
    place <- c(log(fit$scale), -log(fit$shape))
    e <- 1e-4
    slope <- c(1, (at(place[1], place[2] + e) - at(place[1], place[2] - e)) / (2 * e))
    swing <- exp(qnorm((1 + level) / 2) * sqrt(drop(slope %*% fit$covariance %*% slope)))
    case("AGEREPLACE", list(x$days, x$failed, ratio, level), 1e-6, c(answer, answer[1] / swing, answer[1] * swing))
  }
  chance <- function(age, window) {
    lasts <- function(t) pweibull(t, fit$shape, fit$scale, lower.tail = FALSE)
    1 - lasts(age + window) / lasts(age)
  }
  ages <- c(0, 30, 100, 170, 400)
  for (lead in c(3, 30)) case("NOSPARE", list(ages, lead, x$days, x$failed), 1e-6, chance(ages, lead))
  for (window in c(30, 180)) for (share in c(0.5, 0.9)) {
    ages <- sample(0:180, 12)
    p <- chance(ages, window)
    # All 4,096 outcomes.
    outcomes <- as.matrix(expand.grid(rep(list(0:1), 12)))
    happens <- apply(outcomes, 1, function(o) prod(ifelse(o == 1, p, 1 - p)))
    total <- cumsum(tapply(happens, rowSums(outcomes), sum))
    case("UNPLANNED", list(ages, window, x$days, x$failed, share), 0, unname(which(total >= share)[1] - 1))
  }
}

# The chance of a signal by the chain of counts, on a fine list of the places at which a count ceases to signal.
signal.chance <- function(critical, total, least) {
  counts <- least:(least + ceiling(total + 15 * sqrt(total) + 40))
  ratio <- function(n, m) m - n + n * log(n / m) # falls in m from infinity to 0 at m = n
  ends <- vapply(counts, function(n) uniroot(function(m) ratio(n, m) - critical, c(n * exp(-critical / n - 2), n), tol = 1e-14)$root, 0)
  chances <- 1
  now <- 0
  for (i in seq_along(counts)) {
    until <- min(ends[i], total)
    most <- length(chances) - 1 + qpois(1e-19, until - now, lower.tail = FALSE)
    chances <- vapply(0:most, function(k) sum(chances * dpois(k - seq_along(chances) + 1, until - now)), 0)
    chances <- chances[seq_len(min(length(chances), counts[i]))]
    now <- until
    if (ends[i] >= total) return(1 - sum(chances))
  }
}
critical.value <- function(total, level, least)
  uniroot(function(critical) log(signal.chance(critical, total, least) / level), c(1e-5, 30), tol = 1e-12)$root

for (x in Filter(function(x) length(x$days) > 60 && sum(x$failed) > 30, clinics)) for (total in c(6, 15, 40)) for (least in c(1, 4)) {
  devices <- seq_along(x$days)
  lots <- sample(c("L1", "L2", "L03"), length(devices), replace = TRUE, prob = c(0.15, 0.35, 0.5))
  for (lot in c("L1", "L2")) {
    own <- lots == lot
    fit <- weibull.fit(lapply(x, function(column) column[!own]))
    seen <- sum(x$failed[own])
    expected <- sum((x$days[own] / fit$scale)^fit$shape)
    if (expected > total || seen == 0) next
    limits <- poisson.test(seen, expected, conf.level = 0.95)$conf.int
    ratio <- if (seen > expected) expected - seen + seen * log(seen / expected) else 0
    signals <- ratio > 0 && ratio >= critical.value(total, 0.05 / 3, least)
    word <- if (seen < least) "too_few_to_say" else if (signals) "look_at_this_lot" else "no_signal"
    numbers <- digits(c(seen, expected, seen / expected, limits))
    case("LOTSIGNAL", list(lot, lots, x$days, x$failed, total, 0.05, least), 1e-6, c(numbers, word))
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
