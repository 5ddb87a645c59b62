# Answers of R's own Kalman smoother (package stats, KalmanSmooth) about invented series, as JSON on standard output:
# checks/recorded/kalman-smoother.json.
# Run:  Rscript checks/recorded/kalman-smoother.R > checks/recorded/kalman-smoother.json
# Needs base R (Debian: r-base-core). R is not needed to run the checks: they read what was recorded.
# Model of each: a level that starts from N(0, first) and moves by N(0, step) from day to day; a reading shows it within
# N(0, error); days without a reading are null.
number <- function(x) ifelse(is.finite(x), formatC(x, digits = 15, format = "g", width = -1), "null")
list_of <- function(x) paste0("[", paste(trimws(number(x)), collapse = ", "), "]")

cases <- list(
  daily = list(first = 1, step = 0.09, error = 0.25, y = c(0.8, 1.1, 0.7, 1.4, 1.6, 1.2, 1.9, 2.1)),
  gaps = list(first = 1, step = 0.04, error = 0.16, y = c(NA, 0.2, NA, NA, -0.9, -1.1, NA, NA, NA, -1.6)),
  sure = list(first = 1, step = 0.25, error = 0.01, y = c(0.5, NA, 1.5, NA, 0.5)),
  vague = list(first = 1, step = 0.01, error = 4, y = c(3, -2, 2.5, 1, NA, 4)))

rows <- sapply(names(cases), function(name) {
  k <- cases[[name]]
  # Pn is the variance of the first level before any reading; the smoother starts from it.
  model <- list(T = matrix(1), Z = 1, h = k$error, V = matrix(k$step), a = 0, P = matrix(0), Pn = matrix(k$first))
  s <- KalmanSmooth(k$y, model, nit = 0L)
  paste0("    {\"name\": \"", name, "\", \"first\": ", number(k$first), ", \"step\": ", number(k$step), ", \"error\": ",
    number(k$error), ",\n     \"y\": ", list_of(k$y), ",\n     \"level\": ", list_of(as.vector(s$smooth)),
    ",\n     \"variance\": ", list_of(as.vector(s$var)), "}")
})
cat("{\n  \"made_by\": \"", R.version.string, ", stats::KalmanSmooth\",\n  \"cases\": [\n", paste(rows, collapse = ",\n"),
  "\n  ]\n}\n", sep = "")
