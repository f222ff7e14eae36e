import pages from "./playwright.config.ts";
export default { ...pages, testDir: process.env.DIR ?? "tests/shots", use: { ...pages.use, baseURL: "http://127.0.0.1:4191/" }, webServer: { command: "python3 -m http.server 4191 --bind 127.0.0.1 -d ../out/site", url: "http://127.0.0.1:4191/", reuseExistingServer: true } };
