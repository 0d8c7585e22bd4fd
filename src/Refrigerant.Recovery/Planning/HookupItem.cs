namespace Refrigerant.Recovery.Planning;

/// <summary>Something that has a position in a hookup.</summary>
public enum HookupItem
{
    /// <summary>The appliance's vapor port.</summary>
    ApplianceVaporPort = 0,

    /// <summary>The appliance's liquid port.</summary>
    ApplianceLiquidPort,

    /// <summary>The cylinder's vapor valve.</summary>
    CylinderVaporValve,

    /// <summary>The cylinder's liquid valve.</summary>
    CylinderLiquidValve,

    /// <summary>The valves of the hoses.</summary>
    HoseValves,

    /// <summary>The machine's inlet valve.</summary>
    MachineInletValve,

    /// <summary>The machine's outlet valve.</summary>
    MachineOutletValve,

    /// <summary>The machine's vent, for air only.</summary>
    MachineVent,

    /// <summary>The machine.</summary>
    Machine,

    /// <summary>The fan of its condenser.</summary>
    CondenserFan,

    /// <summary>Cooling water of its condenser.</summary>
    CondenserWater,

    /// <summary>The cylinder's float switch.</summary>
    FloatSwitch,

    /// <summary>Heat on the appliance.</summary>
    ApplianceHeater,

    /// <summary>The crankcase heater of the appliance.</summary>
    CrankcaseHeater,

    /// <summary>The appliance's own fans.</summary>
    ApplianceFans,

    /// <summary>Water in the appliance's tubes.</summary>
    TubeWater,

    /// <summary>What the cylinder stands in.</summary>
    CylinderCooling,

    /// <summary>The regulator of the nitrogen.</summary>
    NitrogenRegulator,

    /// <summary>The scale under the cylinder.</summary>
    Scale,

    /// <summary>The appliance's second vapor port.</summary>
    ApplianceSecondVaporPort,
}
