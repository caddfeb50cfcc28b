namespace Scuff.Prose;

/// <summary>What is said of the weight after an action, where its verb leaves it open.</summary>
public enum WeightRemark
{
    /// <summary>Nothing: the verb says it.</summary>
    None,

    /// <summary>The weight is on the left foot.</summary>
    OnLeft,

    /// <summary>The weight is on the right foot.</summary>
    OnRight,

    /// <summary>The foot takes no weight, against the habit of its verb.</summary>
    NotTaken,

    /// <summary>The foot takes the weight, against the habit of its verb.</summary>
    Taken,

    /// <summary>The weight is on both feet.</summary>
    OnBoth,
}
