using Scuff.Stance;

namespace Scuff.Prose.Reading;

/// <summary>A foot word in a clause.</summary>
/// <param name="Foot">Which.</param>
/// <param name="IsCertain">False for a bare right or left, which may be a side.</param>
/// <param name="IsWord">Whether it is written out ("right"), which may be a side, unlike the letter.</param>
/// <param name="MayBeReference">Whether it may be the standing foot ("over left").</param>
internal readonly record struct FootWord(Foot Foot, bool IsCertain, bool MayBeReference, bool IsWord = false);
