# How long R's survfit takes for the same lives: survival shares with log-log limits, and the median with its limits.
# Reads a file of doubles: how many, their days, then 1 where one failed and 0 where not. Writes versions, seconds, median.

suppressPackageStartupMessages(library(survival))

file <- file(commandArgs(TRUE)[1], "rb")
n <- readBin(file, "double", 1)
days <- readBin(file, "double", n)
failed <- readBin(file, "double", n)
close(file)

middle <- NA
seconds <- replicate(2, system.time({
  fit <- survfit(Surv(days, failed) ~ 1, conf.type = "log-log")
  middle <<- quantile(fit, 0.5)$quantile
})[["elapsed"]])
# The first run warms up.
version <- paste(getRversion(), "survival", packageVersion("survival"))
cat(version, median(seconds[-1]), format(middle, digits = 15), sep = "\n")
