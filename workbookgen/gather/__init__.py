"""Many filled planners read into one set of tables, and what they show together: a guild's own figures."""
