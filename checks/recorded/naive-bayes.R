# Answers of R's package e1071 (naiveBayes) for an invented trait key, as JSON on standard output:
# checks/recorded/naive-bayes-r.json. Run:  Rscript checks/recorded/naive-bayes.R > checks/recorded/naive-bayes-r.json
# Needs R with e1071 (Debian: r-base-core r-cran-e1071). R is not needed to run the checks: they read what was recorded.
suppressMessages(library(e1071))
set.seed(11)

number <- function(x) formatC(x, digits = 15, format = "g", width = -1)
text <- function(x) paste0("\"", x, "\"")
object <- function(names, values) paste0("{", paste(paste0(text(names), ": ", values), collapse = ", "), "}")
array <- function(x) paste0("[", paste(x, collapse = ", "), "]")

things <- c("moss", "crust", "thread", "bead")
n <- 600
thing <- factor(sample(things, n, TRUE, c(0.4, 0.3, 0.2, 0.1)), levels = things)
yes <- function(p) factor(ifelse(runif(n) < p[thing], "yes", "no"), levels = c("yes", "no"))
colour <- factor(sapply(thing, function(t) sample(c("red", "green", "brown"), 1,
  prob = switch(as.character(t), moss = c(1, 7, 2), crust = c(6, 1, 3), thread = c(2, 6, 2), bead = c(1, 8, 1)))),
  levels = c("red", "green", "brown"))
seen <- data.frame(colour,
  slimy = yes(c(moss = 0.2, crust = 0.1, thread = 0.6, bead = 0.3)),
  hard = yes(c(moss = 0.05, crust = 0.9, thread = 0.1, bead = 0.5)),
  round = yes(c(moss = 0.1, crust = 0.2, thread = 0.05, bead = 0.95)))
fit <- naiveBayes(seen, thing)

rows <- rbind(
  c("green", "no", "no", "yes"), c("red", NA, "yes", NA), c(NA, NA, NA, NA), c("brown", "yes", "no", "no"),
  c("green", "yes", "yes", "yes"), c(NA, "no", "yes", "no"), c("red", "yes", NA, "yes"), c("brown", "no", "no", "no"))
asked <- as.data.frame(rows, stringsAsFactors = FALSE)
names(asked) <- names(seen)
for (name in names(seen)) asked[[name]] <- factor(asked[[name]], levels = levels(seen[[name]]))
told <- predict(fit, asked, type = "raw")

share <- as.numeric(fit$apriori) / sum(fit$apriori)
chances <- sapply(seq_along(things), function(i) object(
  c(levels(colour), "slimy", "hard", "round"),
  number(c(fit$tables$colour[i, ], fit$tables$slimy[i, "yes"], fit$tables$hard[i, "yes"], fit$tables$round[i, "yes"]))))
cases <- sapply(seq_len(nrow(rows)), function(r) object(c("answers", "chances"), c(
  object(names(seen), ifelse(is.na(rows[r, ]), "null", text(rows[r, ]))), object(things, number(told[r, ])))))
cat("{\n  \"by\": ", text(paste0("R ", getRversion(), ", e1071 ", packageVersion("e1071"))),
  ",\n  \"things\": [\n    ", paste(sapply(seq_along(things), function(i)
    object(c("id", "prior", "chances"), c(text(things[i]), number(share[i]), chances[i]))), collapse = ",\n    "),
  "\n  ],\n  \"cases\": [\n    ", paste(cases, collapse = ",\n    "), "\n  ]\n}\n", sep = "")
