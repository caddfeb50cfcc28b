using Scuff.Repertoire;

namespace Scuff.App.Book;

/// <summary><c>scuff book plan CLASS DAY</c>: plans a session.</summary>
internal sealed class PlanAct : SessionAct
{
    public override string Name => "plan";

    protected override bool IsHeld => false;

    protected override string Done(ClassSession? there, bool hasDances) => there is null ? "Planned" : "Planned anew";
}
