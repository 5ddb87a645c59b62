# Records what R says of survival and of counts, for checks/recorded/heads.test.ts:
#   Rscript checks/recorded/heads.R > checks/recorded/heads.json
# Debian packages r-base-core and r-cran-survival. Data sets are those that the survival package ships.
suppressMessages(library(survival))
number <- function(x) ifelse(is.na(x) | is.nan(x), "null", formatC(x, digits = 15, format = "g"))
numbers <- function(x) paste0("[", paste(number(x), collapse = ", "), "]")
km <- function(name, time, status) {
  s <- summary(survfit(Surv(time, status) ~ 1))
  paste0('    {"name": "', name, '", "time": ', numbers(time), ', "status": ', numbers(status),
    ',\n     "steps": {"time": ', numbers(s$time), ', "n_risk": ', numbers(s$n.risk), ', "n_event": ', numbers(s$n.event),
    ',\n       "surv": ', numbers(s$surv), ',\n       "std_err": ', numbers(s$std.err),
    ',\n       "lower": ', numbers(s$lower), ',\n       "upper": ', numbers(s$upper), "},\n",
    '     "exponential_rate": ', number(exp(-coef(survreg(Surv(time, status) ~ 1, dist = "exponential")))), "}")
}
m <- aml[aml$x == "Maintained", ]
n <- aml[aml$x == "Nonmaintained", ]
# Poisson limits, the exact ones.
counts <- c(0, 1, 2, 3, 5, 8, 13, 40)
limits <- sapply(counts, function(k) poisson.test(k, conf.level = 0.9)$conf.int)
# Posterior of heads: N of 0 to 12, each as likely before; counts by a chance that is beta about its mean, by quadrature.
chance <- function(k, N, mean, strength) {
  integrate(function(p) dbinom(k, N, p) * dbeta(p, mean * strength, (1 - mean) * strength),
    0, 1, rel.tol = 1e-11, subdivisions = 2000L)$value
}
posterior <- function(seen, mean, strength, prior) {
  w <- prior * sapply(seq_along(prior) - 1, function(N) prod(sapply(seen, chance, N = N, mean = mean, strength = strength)))
  w / sum(w)
}
cases <- list(
  list(seen = c(3), mean = 0.6, strength = 10, prior = rep(1, 13)),
  list(seen = c(3, 5, 4), mean = 0.6, strength = 10, prior = rep(1, 13)),
  list(seen = c(0, 0), mean = 0.82, strength = 10, prior = dbinom(0:8, 8, 0.9)),
  # Royle's model (2004) for one place: heads Poisson, counts binomial.
  list(seen = c(2, 3, 1), mean = 0.5, strength = 1e6, prior = dpois(0:25, 5))
)
post <- sapply(cases, function(c) paste0('    {"seen": ', numbers(c$seen), ', "mean": ', number(c$mean), ', "strength": ', number(c$strength),
  ',\n     "prior": ', numbers(c$prior), ',\n     "posterior": ', numbers(posterior(c$seen, c$mean, c$strength, c$prior)), "}"))
cat('{\n  "made_by": "checks/recorded/heads.R, ', R.version.string, ", survival ", as.character(packageVersion("survival")), '",\n', sep = "")
cat('  "kaplan_meier": [\n', paste(c(
  km("aml, maintained (Miller 1981)", m$time, m$status),
  km("aml, not maintained (Miller 1981)", n$time, n$status),
  km("lung, all (Loprinzi et al. 1994)", lung$time, lung$status - 1)), collapse = ",\n"), "\n  ],\n", sep = "")
cat('  "poisson_90": {"count": ', numbers(counts), ', "low": ', numbers(limits[1, ]), ', "high": ', numbers(limits[2, ]), "},\n", sep = "")
cat('  "counts": [\n', paste(post, collapse = ",\n"), "\n  ]\n}\n", sep = "")
