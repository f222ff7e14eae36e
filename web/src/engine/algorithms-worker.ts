// The worker for sheets of algorithms; a page starts it when that work is begun.

import init, { Worker as Engine } from "./algorithms/wasm.js";
import address from "./algorithms/wasm_bg.wasm?url";
import { serve } from "./serve";

serve({ init, Engine, address });
