using Scuff.Repertoire;

namespace Scuff.App.Book;

/// <summary><c>scuff book record CLASS DAY</c>: writes down a session that was held; without dances it went as planned.</summary>
internal sealed class RecordAct : SessionAct
{
    public override string Name => "record";

    protected override bool IsHeld => true;

    protected override string Done(ClassSession? there, bool hasDances) => there switch
    {
        null => "Recorded",
        { IsHeld: true } => "Changed what was recorded of",
        _ when hasDances => "Recorded, otherwise than planned,",
        _ => "Recorded as planned",
    };
}
