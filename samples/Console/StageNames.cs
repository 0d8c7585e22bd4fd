using Refrigerant.Recovery.Planning;

namespace Refrigerant.Recovery.Samples.Console;

/// <summary>The stages of a plan in a technician's words.</summary>
internal static class StageNames
{
    public static string Of(StageKind kind) => kind switch
    {
        StageKind.SetUp => "set up and weigh",
        StageKind.LiquidRecovery => "liquid by machine",
        StageKind.Rest => "rest and cool",
        StageKind.Warm => "warm up",
        StageKind.OilDrain => "drain machine's oil",
        StageKind.OilFill => "fill machine's oil",
        StageKind.HoseSweep => "sweep hoses",
        StageKind.Equalize => "vapor first",
        StageKind.PushPull => "push-pull",
        StageKind.HoseChange => "change hoses",
        StageKind.VaporRecovery => "vapor recovery",
        StageKind.CylinderChange => "change cylinder",
        StageKind.Hold => "hold and watch",
        StageKind.MachineClearing => "clear machine",
        _ => "close and weigh",
    };
}
