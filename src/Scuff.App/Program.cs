using Scuff.App;

#if PACKAGE
// The file for other people's machines is started by a double click, which says nothing: it opens the studio.
return CommandTree.Run(args.Length == 0 ? ["open"] : args, Terminal.OfThisProcess());
#else
return CommandTree.Run(args, Terminal.OfThisProcess());
#endif
