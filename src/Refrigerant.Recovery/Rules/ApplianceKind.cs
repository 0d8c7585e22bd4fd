namespace Refrigerant.Recovery.Rules;

/// <summary>The kinds of appliance that 40 CFR 82.156 treats differently.</summary>
public enum ApplianceKind
{
    /// <summary>Any other appliance: Table 1 applies.</summary>
    General = 0,

    /// <summary>Made, charged and hermetically sealed in a factory with 5 lb or less.</summary>
    Small,

    /// <summary>A motor vehicle air conditioner, or one like it, at disposal.</summary>
    MotorVehicle,
}
