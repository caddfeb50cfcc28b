using System.CommandLine;
using System.CommandLine.Help;

// A plain Command rather than a RootCommand: the latter takes its name from the assembly file.
Command scuff = new("scuff", "The workshop of a line dance choreographer and teacher.")
{
    new HelpOption(),
    new VersionOption(),
};
return scuff.Parse(args).Invoke();
