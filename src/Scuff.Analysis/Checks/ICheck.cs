using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks;

/// <summary>
/// One thing to look for. A check is one class in one file, with its rule as a static property; it is found by this
/// interface and needs no other registration. It has no state and never throws on any dance.
/// </summary>
public interface ICheck
{
    /// <summary>The rule it watches over.</summary>
    Rule Rule { get; }

    /// <summary>Its complaints about a dance, in any order.</summary>
    IEnumerable<Diagnostic> Check(CheckContext context);
}
