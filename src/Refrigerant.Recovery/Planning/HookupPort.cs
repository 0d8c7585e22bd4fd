namespace Refrigerant.Recovery.Planning;

/// <summary>An end of a line in a hookup.</summary>
public enum HookupPort
{
    /// <summary>The appliance's vapor port.</summary>
    ApplianceVapor = 0,

    /// <summary>A second vapor port of the appliance: low side beside high side.</summary>
    ApplianceSecondVapor,

    /// <summary>The appliance's liquid port.</summary>
    ApplianceLiquid,

    /// <summary>The machine's inlet.</summary>
    MachineInlet,

    /// <summary>The machine's outlet.</summary>
    MachineOutlet,

    /// <summary>The cylinder's vapor port.</summary>
    CylinderVapor,

    /// <summary>The cylinder's liquid port.</summary>
    CylinderLiquid,

    /// <summary>The air, for air only.</summary>
    Air,

    /// <summary>Dry nitrogen behind a regulator.</summary>
    Nitrogen,

    /// <summary>The drain of the machine's separator or compressor.</summary>
    MachineDrain,

    /// <summary>A vented container for old oil.</summary>
    OilContainer,

    /// <summary>A measure with new oil.</summary>
    OilMeasure,

    /// <summary>A separate cylinder of the machine's last refrigerant, none of the job's.</summary>
    LastRefrigerantCylinder,
}
