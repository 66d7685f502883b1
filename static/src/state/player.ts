/** The one object the screens watch: it starts, runs, restores and ends a session. */
