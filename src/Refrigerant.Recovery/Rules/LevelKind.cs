namespace Refrigerant.Recovery.Rules;

/// <summary>What kind of level a rule asks for.</summary>
public enum LevelKind
{
    /// <summary>An absolute pressure, the same wherever the appliance stands.</summary>
    AbsolutePressure = 0,

    /// <summary>A gauge pressure, relative to the air at the place: 0 psig, 5 psig.</summary>
    GaugePressure,

    /// <summary>A share of the charge, or an absolute pressure in its place: either meets the rule.</summary>
    ShareOrPressure,

    /// <summary>The rules of the place state no pressure; that of the air stands in, so that nothing blows out on opening.</summary>
    NoFigure,
}
