// The worker for what the first screen needs.

import init, { Worker as Engine } from "./first/first.js";
import address from "./first/first_bg.wasm?url";
import { serve } from "./serve";

serve({ init, Engine, address });
