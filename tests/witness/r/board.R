# Figures of a board page from an invented service's changes, worked out by R alone: counts, tube-days, the rate with its
# limits (poisson.test) and its ratio to the period before (poisson.test of two). Writes board.csv. Run by hand or by
# "npm run witness".
here <- dirname(sub("^--file=", "", grep("^--file=", commandArgs(FALSE), value = TRUE)))
set.seed(20261201)
n <- 220
day <- function(text) as.integer(as.Date(text) - as.Date("1899-12-30"))
from <- sample(day("2025-10-01"):day("2026-09-20"), n, replace = TRUE)
stay <- sample(10:200, n, replace = TRUE)
until <- from + stay
unplanned <- runif(n) < 0.45
reason <- ifelse(unplanned, sample(c("balloon burst", "blocked", "split or broken"), n, TRUE, c(6, 3, 1)), "planned")
where <- sample(c("home", "clinic", "ward", ""), n, TRUE, c(5, 3, 1, 1))
nights <- ifelse(unplanned & where == "ward", sample(1:6, n, TRUE), 0)
person <- sprintf("P-%02d", sample(1:60, n, replace = TRUE))
devices <- data.frame(person, from, until, unplanned = as.integer(unplanned), reason, where, nights)

figures <- function(start, end) {
  days <- pmax(0, pmin(until, end) - pmax(from, start))
  out <- until >= start & until < end
  test <- poisson.test(sum(out & unplanned), sum(days))
  list(
    people = length(unique(person[days > 0])), tubeDays = sum(days), planned = sum(out & !unplanned),
    unplanned = sum(out & unplanned), nights = sum(nights[out & unplanned]),
    burst = sum(out & reason == "balloon burst"), home = sum(out & unplanned & where == "home"),
    rate = 1000 * unname(test$estimate), low = 1000 * test$conf.int[1], high = 1000 * test$conf.int[2]
  )
}
now <- figures(day("2026-07-01"), day("2026-10-01"))
before <- figures(day("2026-04-01"), day("2026-07-01"))
ratio <- poisson.test(c(now$unplanned, before$unplanned), c(now$tubeDays, before$tubeDays))
told <- c(
  setNames(unlist(now), paste0("now ", names(now))), setNames(unlist(before), paste0("before ", names(before))),
  `ratio value` = unname(ratio$estimate), `ratio low` = ratio$conf.int[1], `ratio high` = ratio$conf.int[2]
)
writeLines(
  c(
    paste0("# Written by board.R with ", R.version.string),
    do.call(paste, c(devices, sep = ",")),
    "# figures",
    paste(names(told), formatC(told, digits = 15, format = "g", width = 1), sep = ",")
  ),
  file.path(here, "board.csv")
)
