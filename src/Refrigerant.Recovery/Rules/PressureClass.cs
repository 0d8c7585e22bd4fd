namespace Refrigerant.Recovery.Rules;

/// <summary>The pressure classes of appliances in 40 CFR 82.152.</summary>
public enum PressureClass
{
    /// <summary>Below 45 psia at 104 °F.</summary>
    Low = 0,

    /// <summary>From 45 to 170 psia at 104 °F.</summary>
    Medium,

    /// <summary>Above 170, up to 355 psia at 104 °F.</summary>
    High,

    /// <summary>Above 355 psia at 104 °F, or a critical temperature below 104 °F.</summary>
    VeryHigh,
}
