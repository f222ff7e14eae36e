// The worker for what the first screen needs.

import init, { Worker as Engine } from "./first/wasm.js";
import address from "./first/wasm_bg.wasm?url";
import { serve } from "./serve";

serve({ init, Engine, address });
