import pages from "./playwright.config.ts";
export default { ...pages, testDir: process.env.DIR ?? "tests/shots", outputDir: "/tmp/tr2", use: { ...pages.use, baseURL: "http://127.0.0.1:4192/" }, webServer: { command: "python3 -m http.server 4192 --bind 127.0.0.1 -d /tmp/site-b 2>/dev/null", url: "http://127.0.0.1:4192/", reuseExistingServer: true } };
