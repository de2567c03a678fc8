"""Types of modules and inverters from tables: a user's CSV, or the open tables of a general library."""
