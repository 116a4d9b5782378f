# Rscript r-determinants.R > r-determinants.json (R 4.2.2, base alone)
quad <- function(P) {
  k <- ncol(P)
  X <- cbind(1, P)
  for (i in 1:(k - 1)) for (j in (i + 1):k) X <- cbind(X, P[, i] * P[, j])
  cbind(X, P^2)
}
ccd <- function(k) {
  cube <- as.matrix(expand.grid(rep(list(c(-1, 1)), k)))
  alpha <- nrow(cube)^(1 / 4)
  rbind(cube, alpha * diag(k), -alpha * diag(k), matrix(0, 6, k))
}
bbd <- function(k) {
  together <- combn(k, 2)
  corners <- as.matrix(expand.grid(c(-1, 1), c(-1, 1)))
  P <- NULL
  for (b in seq_len(ncol(together))) {
    block <- matrix(0, 4, k)
    block[, together[, b]] <- corners
    P <- rbind(P, block)
  }
  rbind(P, matrix(0, if (k < 5) 3 else 6, k))
}
judge <- function(P) {
  X <- quad(P)
  M <- crossprod(X)
  R <- quad(as.matrix(expand.grid(rep(list(-1:1), ncol(P)))))
  v <- rowSums((R %*% solve(M)) * R)
  sprintf('{"logDet": %.12g, "average": %.12g, "largest": %.12g}', as.numeric(determinant(M)$modulus), mean(v), max(v))
}
plans <- list(ccd2 = ccd(2), ccd3 = ccd(3), ccd4 = ccd(4), bbd3 = bbd(3), bbd4 = bbd(4), bbd5 = bbd(5))
cat("{\n", paste0('  "', names(plans), '": ', sapply(plans, judge), collapse = ",\n"), "\n}\n", sep = "")
