"""The site as it would be published, served on this machine alone and made again at every save."""
