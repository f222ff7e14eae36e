// The worker for what a page needs at its first use.

import init, { Worker as Engine } from "./module/wasm.js";
import address from "./module/wasm_bg.wasm?url";
import { serve } from "./serve";

serve({ init, Engine, address });
