using Scuff.App;

return CommandTree.Run(args, Terminal.OfThisProcess());
