# Answers of R about slopes, ranks, changes and medians, as JSON on standard output: checks/recorded/trends-r.json.
# Run:  Rscript checks/recorded/trends.R > checks/recorded/trends-r.json
# Needs R with survival and strucchange (Debian: r-base-core r-cran-survival r-cran-strucchange). R is not needed to run
# the checks: they read what was recorded.
suppressMessages({ library(survival); library(strucchange) })

number <- function(x) ifelse(is.finite(x), formatC(x, digits = 15, format = "g", width = -1), "null")
list_of <- function(x) paste0("[", paste(trimws(number(x)), collapse = ", "), "]")
text <- function(x) paste0("\"", x, "\"")
object <- function(...) { a <- list(...); paste0("{", paste(paste0(text(names(a)), ": ", unlist(a)), collapse = ", "), "}") }
array <- function(x) paste0("[\n    ", paste(unlist(x), collapse = ",\n    "), "\n  ]")

# Invented series: a rise with ties and irregular days, a fall, noise alone, repeated days.
series <- list(
  rise = list(x = c(0, 3, 7, 8, 14, 15, 21, 27, 30, 35, 41, 44), y = c(5, 5, 7, 6, 7, 9, 9, 8, 12, 11, 12, 14)),
  fall = list(x = c(1, 2, 4, 5, 8, 12, 13), y = c(8.4, 8.5, 8.2, 8.1, 8.1, 7.7, 7.8)),
  noise = list(x = 0:19, y = c(2.1, 1.9, 2.4, 2.2, 1.7, 2.0, 2.3, 2.6, 1.8, 2.2, 2.1, 2.0, 2.5, 1.6, 2.2, 2.4, 1.9, 2.1, 2.0, 2.3)),
  repeats = list(x = c(0, 0, 0, 5, 9, 9, 14, 20), y = c(10, 22, 21, 30, 22, 30, 40, 40)))

kendall <- lapply(names(series), function(name) {
  s <- series[[name]]
  t <- suppressWarnings(cor.test(s$x, s$y, method = "kendall", exact = FALSE, continuity = FALSE))
  object(name = text(name), days = list_of(s$x), values = list_of(s$y), z = number(unname(t$statistic)),
    tau = number(unname(t$estimate)))
})

student <- unlist(lapply(c(1, 2, 3, 5, 8, 13, 30, 97, 400), function(df) sapply(c(0.1, 0.7, 1.5, 2.5, 4, 7, 12), function(t)
  object(t = number(t), df = number(df), chance = number(2 * pt(-t, df))))))

# A line and a change beside it; the error made wider by the likeness of neighbours, from R's own autocorrelation.
change <- function(name, x, y, at, shape) {
  d <- if (shape == "step") as.numeric(x >= at) else pmax(0, x - at)
  fit <- lm(y ~ x + d)
  r <- residuals(fit); n <- length(r)
  a <- acf(rank(r), lag.max = 1, plot = FALSE)$acf[2]
  like <- min(0.8, max(0, a + (3 + 5 * max(0, a)) / n))
  factor <- (1 + like) / (1 - like)
  c <- summary(fit)$coefficients["d", ]
  error <- c[["Std. Error"]] * sqrt(factor)
  object(name = text(name), days = list_of(x), values = list_of(y), at = number(at), shape = text(shape),
    by = number(c[["Estimate"]]), error = number(error), chance = number(2 * pt(-abs(c[["Estimate"]] / error), max(1, n / factor - 3))))
}
step_y <- c(4.1, 4.4, 3.9, 4.3, 4.6, 4.2, 4.5, 6.9, 7.1, 6.6, 7.2, 6.8, 7.0, 7.3, 6.9)
bend_y <- c(4.1, 4.4, 3.9, 4.3, 4.6, 4.2, 4.5, 4.9, 5.6, 5.8, 6.7, 7.0, 7.9, 8.3, 8.8)
changes <- list(
  change("step", 0:14 * 4, step_y, 28, "step"), change("step asked as a bend", 0:14 * 4, step_y, 28, "bend"),
  change("bend", 0:14 * 4, bend_y, 26, "bend"), change("nothing", 0:19, series$noise$y, 9, "step"))

# The Nile at Aswan, 1871 to 1970, of R's own data sets: a step at 1898 is the published answer.
nile <- as.numeric(Nile); year <- 1871:1970
f <- Fstats(Nile ~ 1)
beside_line <- sapply(4:96, function(k) { d <- as.numeric(year > year[k]); summary(lm(nile ~ year + d))$coefficients["d", "t value"] })
best <- (4:96)[which.max(abs(beside_line))]

# Medians where some readings only say "below": Kaplan-Meier of the flipped values, the usual way.
below <- list(
  some = list(v = c(0.02, 0.02, 0.03, 0.05, 0.02, 0.04, 0.06, 0.02, 0.03), cens = c(TRUE, FALSE, FALSE, FALSE, TRUE, FALSE, FALSE, TRUE, FALSE)),
  few = list(v = c(1, 2, 2, 3, 5, 8, 4, 6, 7, 2, 3), cens = c(TRUE, TRUE, FALSE, FALSE, FALSE, FALSE, FALSE, FALSE, FALSE, TRUE, FALSE)))
medians <- lapply(names(below), function(name) {
  b <- below[[name]]; flip <- max(b$v) + 1
  fit <- survfit(Surv(flip - b$v, !b$cens) ~ 1)
  object(name = text(name), values = list_of(b$v), censored = paste0("[", paste(tolower(as.character(b$cens)), collapse = ", "), "]"),
    median = number(flip - unname(quantile(fit, 0.5, conf.int = FALSE))))
})

# Slopes of readings that are intervals. By definition: where Kendall's S of the residuals changes sign, found by halving.
# And as a second opinion a Gaussian regression on intervals (survreg), another model of the same data.
set.seed(4)
interval <- lapply(c("rounded", "censored", "rounded and censored"), function(name) {
  x <- sort(sample(0:80, 24)); truth <- 2 + 0.12 * x + rnorm(24, 0, 1.2)
  low <- truth; high <- truth
  if (name != "censored") { low <- round(truth / 2) * 2 - 1; high <- low + 2 }
  if (name != "rounded") { b <- truth < 5; low[b] <- 0; high[b] <- 5; low[!b] <- pmax(low[!b], 5); high[!b] <- pmax(high[!b], low[!b]) }
  s <- function(b) { rl <- low - b * x; rh <- high - b * x; t <- 0
    for (i in 1:23) for (j in (i + 1):24) t <- t + (rl[j] > rh[i]) - (rh[j] < rl[i]); t }
  edge <- function(test) { a <- -50; b <- 50; for (i in 1:100) { m <- (a + b) / 2; if (test(s(m))) a <- m else b <- m }; (a + b) / 2 }
  point <- high == low
  fit <- survreg(Surv(ifelse(low == 0 & name != "rounded", NA, low), ifelse(low == 0, high, high), type = "interval2") ~ x, dist = "gaussian")
  object(name = text(name), days = list_of(x), low = list_of(low), high = list_of(high),
    slope = number((edge(function(v) v > 0) + edge(function(v) v >= 0)) / 2),
    regression = number(unname(coef(fit)[2])), regression_error = number(sqrt(vcov(fit)[2, 2])))
})

cat(object(
  about = text("Answers of R, recorded by checks/recorded/trends.R; the data but the Nile are invented there."),
  made_with = text(paste0(R.version.string, "; survival ", packageVersion("survival"), "; strucchange ", packageVersion("strucchange"))),
  kendall = array(kendall), student = array(student), changes = array(changes),
  nile = object(years = list_of(year), flow = list_of(nile), level_break_after = number(1870 + f$breakpoint), level_f = number(max(f$Fstats)),
    beside_line_break_after = number(year[best])),
  medians = array(medians), intervals = array(interval)))
cat("\n")
