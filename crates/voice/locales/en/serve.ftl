# What is said when the web app is served: at the start by the command line, later by the server to whoever asks it.

serve-no-port = A port is a number from 0 to 65535, as --port 4170; 0 takes any that is free.
serve-taken-by-hoodwink = Port { $port } is taken: another Hoodwink serves there already. Open { $address } or take another port: { $offer }
serve-taken-by-other = Port { $port } is taken by another program. Take another one: { $offer }
serve-offer-free = --port { $free } is free now, --port 0 takes any that is free and says which.
serve-offer-any = --port 0 takes any that is free and says which.
serve-forbidden = This system does not let the program listen on port { $port }. Take one from 1024 up; --port 0 takes any that is free and says which.
serve-failed = Nothing can be served on port { $port }: { $what }
serve-failed-address = this machine has no address { $address }.
serve-failed-memory = there is not enough memory.
serve-failed-number = the system refuses it (error { $number }).
serve-failed-unknown = the system refuses it without a reason.

serve-no-file = There is no such file here.
serve-no-host = The request must say once which host it is meant for.
serve-other-host = This is Hoodwink, served to this machine alone. It answers to 127.0.0.1 and localhost with its port and to no other name; open { $address }
serve-other-origin = This is Hoodwink, served to this machine alone. The pages of other sites get no answer; open { $address }
serve-only-files = Files can be fetched here (GET, HEAD), nothing else.
serve-no-content = Nothing can be sent to this server; a request for a file has no content.
serve-other-version = The file is not the version that was asked for.
serve-outside = The file has { $length } bytes; the part that was asked for is not among them.
serve-fault = This request met a fault of the program. The server goes on.

not-built-title = Hoodwink: the screens are not built
not-built-heading = The screens are not part of this program
not-built-before = It was built before them. In the folder of the sources run
not-built-after = which builds the screens (it needs Node 20 or newer), builds the program again with them inside, and opens it.
not-built-alone = This writes the screens alone, as a folder for any web host:
