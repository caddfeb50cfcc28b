using Scuff.Repertoire;

namespace Scuff.App.Programmes;

/// <summary>A file that an evening can be taken along as. A class that implements it, with a constructor without arguments, is found and offered.</summary>
internal interface IEveningFile
{
    /// <summary>Its name in addresses, such as <c>programme-pdf</c>.</summary>
    string Name { get; }

    /// <summary>What the button says, such as <c>Programme, to print</c>.</summary>
    string Words { get; }

    /// <summary>Ending of the file's name, with its dot.</summary>
    string Extension { get; }

    /// <summary>Its media type.</summary>
    string MediaType { get; }

    /// <summary>Its place among the others, small first.</summary>
    int Order { get; }

    /// <summary>Makes the file.</summary>
    /// <param name="club">The club.</param>
    /// <param name="evening">The evening.</param>
    /// <param name="plan">Its plan, with a programme.</param>
    /// <param name="words">The words of that programme.</param>
    /// <param name="output">Where it goes; left open.</param>
    void Write(Club club, ClubEvening evening, EveningPlan plan, EveningWords words, Stream output);
}
