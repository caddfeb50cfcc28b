using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks;

/// <summary>
/// One thing to look for. A check is one class in one file, with its rule as a static property, and a line in
/// <see cref="AllChecks"/>, which a test asks for. It has no state and never throws on any dance.
/// </summary>
public interface ICheck
{
    /// <summary>The rule it watches over.</summary>
    Rule Rule { get; }

    /// <summary>Its complaints about a dance, in any order.</summary>
    IEnumerable<Diagnostic> Check(CheckContext context);
}
