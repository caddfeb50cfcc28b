namespace Scuff.App.Web.Contract;

/// <summary>How the hall stands; for her page on this machine only, because the code is in it.</summary>
/// <param name="IsOpen">Whether devices in the hall's network are answered.</param>
/// <param name="Guests">Whom the code lets in: <c>tablet</c> or <c>floor</c>.</param>
/// <param name="Code">The six digits; null when none lets in.</param>
/// <param name="CodeSeconds">Seconds it lets in from now on.</param>
/// <param name="Why">Why there is no code; empty when there is one.</param>
/// <param name="Addresses">Where a device opens the page, the likeliest first.</param>
/// <param name="Tablets">Tablets that are there.</param>
/// <param name="Screens">Watching screens that are there.</param>
internal sealed record HallAnswer(
    bool IsOpen,
    string Guests,
    string? Code,
    int CodeSeconds,
    string Why,
    IReadOnlyList<HallAddressAnswer> Addresses,
    int Tablets,
    int Screens);

/// <summary>An address of the hall's page.</summary>
/// <param name="Address">What a device opens.</param>
/// <param name="Network">What this machine calls the network.</param>
/// <param name="Sign">The address as a picture for a camera (a QR code).</param>
internal sealed record HallAddressAnswer(string Address, string Network, HallSign Sign);

/// <summary>A picture of small squares.</summary>
/// <param name="Size">Squares to a side, with the quiet edge.</param>
/// <param name="Path">The dark ones, as the path of an SVG, a unit to a square.</param>
internal sealed record HallSign(int Size, string Path);

/// <summary>Opens the hall, or makes another code.</summary>
/// <param name="Guests">Whom the code lets in: <c>tablet</c>, which may do what the page does, or <c>floor</c>, which watches.</param>
internal sealed record HallOpen(string Guests);

/// <summary>A device asks to be let in.</summary>
/// <param name="Code">What was typed.</param>
internal sealed record HallPair(string Code);

/// <summary>Who asks.</summary>
/// <param name="Circle"><c>here</c>, <c>tablet</c> or <c>floor</c>.</param>
/// <param name="IsOpen">Whether the hall is open.</param>
internal sealed record HallMe(string Circle, bool IsOpen);

/// <summary>The clock that all devices of the hall go by.</summary>
/// <param name="Now">Milliseconds since the program started.</param>
internal sealed record HallTime(double Now);
