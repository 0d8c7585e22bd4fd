namespace Refrigerant.Recovery.Planning;

/// <summary>Whether a plan uses push-pull.</summary>
public enum PushPullUse
{
    /// <summary>Where liquid can be reached and there is enough of it.</summary>
    WhereItPays = 0,

    /// <summary>Never: vapor recovery only.</summary>
    Never,

    /// <summary>Wherever liquid can be reached, however little it is.</summary>
    Always,
}
