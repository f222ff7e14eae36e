import pages from "./playwright.config.ts";

export default { ...pages, testDir: "tests/shots" };
