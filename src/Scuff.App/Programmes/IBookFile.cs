using Scuff.Repertoire;

namespace Scuff.App.Programmes;

/// <summary>A file that the book of classes can be taken along as. A class that implements it, with a constructor without arguments, is found and offered.</summary>
internal interface IBookFile
{
    /// <summary>Its name in addresses, such as <c>calendar</c>.</summary>
    string Name { get; }

    /// <summary>What the button says, such as <c>Calendar of the classes</c>.</summary>
    string Words { get; }

    /// <summary>Ending of the file's name, with its dot.</summary>
    string Extension { get; }

    /// <summary>Its media type.</summary>
    string MediaType { get; }

    /// <summary>Its place among the others, small first.</summary>
    int Order { get; }

    /// <summary>Makes the file.</summary>
    /// <param name="club">The club.</param>
    /// <param name="now">The time of the place.</param>
    /// <param name="output">Where it goes; left open.</param>
    void Write(Club club, DateTimeOffset now, Stream output);
}
