// Invented: a script for the tests of the server.
