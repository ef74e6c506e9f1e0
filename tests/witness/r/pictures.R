# What the pictures say of the invented caseload, worked out by R from the same devices (devices.csv).
# Writes pictures.csv beside this file; pictures.test.ts compares. Run by: npm run witness
library(survival)
arguments <- commandArgs(FALSE)
here <- dirname(sub("^--file=", "", arguments[grep("^--file=", arguments)]))
source(file.path(here, "models.R"))

all <- read.csv(file.path(here, "devices.csv"), stringsAsFactors = FALSE)
for (column in c("failed", "unplanned", "isInUse")) all[[column]] <- as.numeric(all[[column]] == "true")
x <- all[all$kind == "balloon", ]

lines <- character()
say <- function(name, values) lines <<- c(lines, paste(name, paste(formatC(values, digits = 15, format = "g", width = 1), collapse = " "), sep = ","))

km <- survfit(Surv(days, failed) ~ 1, data = x, conf.type = "log-log")
at <- quantile(km, 0.25)
say("quarter", c(at$quantile, at$lower, at$upper))
say("counts", c(nrow(x), sum(x$failed), sum(x$isInUse)))
by.shape <- survdiff(Surv(days, failed) ~ shape, data = x)
say("shape", c(by.shape$chisq, pchisq(by.shape$chisq, length(by.shape$n) - 1, lower.tail = FALSE)))

# All changes and tube-days from the first day on to today, 26 November 2026.
today <- 46352
ends <- ifelse(is.na(x$until), x$from + floor(x$days + 0.5), x$until)
events <- sum(x$unplanned)
tube.days <- sum(ends - x$from)
rate <- poisson.test(events, tube.days)
say("rate", c(events, tube.days, 1000 * rate$estimate, 1000 * rate$conf.int))

fit <- weibull.fit(list(days = x$days, failed = x$failed))
say("failing", 1 - exp(-((1:3) * 365.25 / 12 / fit$scale)^fit$shape))
stay <- vapply((1:3) * 365.25 / 12, function(t) integrate(function(u) exp(-(u / fit$scale)^fit$shape), 0, t, rel.tol = 1e-12)$value, 0)
say("changes", 100 * 365.25 / stay)
for (ratio in c(2, 3, 5, 10)) say(paste0("best", ratio), best.age(fit$shape, fit$scale, ratio)[1])

model <- frailty.fit(x$person, x$days, x$failed)
people <- unique(x$person)
for (i in which(model$failures >= 2)) {
  answer <- frailty.person(model, i, 0.1, 0.9)
  say(paste0("wear ", people[i]), c(answer[4:6], answer[1:3], answer[7:8]))
}
writeLines(lines, file.path(here, "pictures.csv"))
