// The worker for conventions, sheets and links: what changes what is kept, and reads files.

import init, { Worker as Engine } from "./rest/rest.js";
import address from "./rest/rest_bg.wasm?url";
import { serve } from "./serve";

serve({ init, Engine, address });
