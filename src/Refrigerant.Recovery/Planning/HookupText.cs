namespace Refrigerant.Recovery.Planning;

/// <summary>Ports, items and positions in the trade's plain words.</summary>
internal static class HookupText
{
    public static string Of(HookupPort port) => port switch
    {
        HookupPort.ApplianceVapor => "appliance's vapor port",
        HookupPort.ApplianceSecondVapor => "appliance's second vapor port",
        HookupPort.ApplianceLiquid => "appliance's liquid port",
        HookupPort.MachineInlet => "machine's inlet",
        HookupPort.MachineOutlet => "machine's outlet",
        HookupPort.CylinderVapor => "cylinder's vapor port",
        HookupPort.CylinderLiquid => "cylinder's liquid port",
        HookupPort.Air => "the air",
        HookupPort.Nitrogen => "dry nitrogen",
        HookupPort.MachineDrain => "machine's oil drain",
        HookupPort.OilContainer => "vented oil container",
        HookupPort.LastRefrigerantCylinder => "separate cylinder of the machine's last refrigerant",
        _ => "measure of new oil",
    };

    public static string Of(HookupItem item) => item switch
    {
        HookupItem.ApplianceVaporPort => "appliance's vapor port",
        HookupItem.ApplianceSecondVaporPort => "appliance's second vapor port",
        HookupItem.ApplianceLiquidPort => "appliance's liquid port",
        HookupItem.CylinderVaporValve => "cylinder's vapor valve",
        HookupItem.CylinderLiquidValve => "cylinder's liquid valve",
        HookupItem.HoseValves => "hose valves",
        HookupItem.MachineInletValve => "machine's inlet valve",
        HookupItem.MachineOutletValve => "machine's outlet valve",
        HookupItem.MachineVent => "machine's vent",
        HookupItem.Machine => "machine",
        HookupItem.CondenserFan => "condenser fan",
        HookupItem.CondenserWater => "condenser water",
        HookupItem.FloatSwitch => "float switch",
        HookupItem.ApplianceHeater => "heat on the appliance",
        HookupItem.CrankcaseHeater => "crankcase heater",
        HookupItem.ApplianceFans => "appliance's fans",
        HookupItem.TubeWater => "water in the tubes",
        HookupItem.CylinderCooling => "cylinder",
        HookupItem.NitrogenRegulator => "nitrogen regulator",
        _ => "scale",
    };

    public static string Of(HookupPosition position) => position switch
    {
        HookupPosition.Open => "open",
        HookupPosition.Shut => "shut",
        HookupPosition.Throttled => "throttled",
        HookupPosition.On => "on",
        HookupPosition.Off => "off",
        HookupPosition.Connected => "connected",
        HookupPosition.Bypassed => "bypassed",
        HookupPosition.Clearing => "in its clearing position",
        HookupPosition.IceBath => "in ice and water",
        HookupPosition.WaterBath => "in water",
        HookupPosition.FanStream => "in the stream of a fan",
        HookupPosition.Shade => "in the shade",
        _ => "read and written down",
    };
}
