// The worker for everything that the first screen does not need.

import init, { Worker as Engine } from "./rest/rest.js";
import address from "./rest/rest_bg.wasm?url";
import { serve } from "./serve";

serve({ init, Engine, address });
