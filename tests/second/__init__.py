"""The chain from weight to verdict and price, worked out a second time from the basis."""
