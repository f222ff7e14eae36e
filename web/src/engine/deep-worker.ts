// The worker for what looks into an attempt and draws scrambles.

import init, { Worker as Engine } from "./deep/deep.js";
import address from "./deep/deep_bg.wasm?url";
import { serve } from "./serve";

serve({ init, Engine, address });
