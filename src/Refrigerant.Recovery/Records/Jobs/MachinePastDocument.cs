using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using UnitsNet;

namespace Refrigerant.Recovery.Records.Jobs;

/// <summary>What the machine did last and what oil is in it.</summary>
internal sealed record MachinePastDocument
{
    /// <summary>Designation of the refrigerant of its last job; left out where it is new, evacuated, or not known. Give this or blend.</summary>
    public string? Refrigerant { get; init; }

    /// <summary>The refrigerant of its last job where the catalogue does not have it. Give this or refrigerant.</summary>
    public BlendDocument? Blend { get; init; }

    /// <summary>Whether it was cleared after its last job; true by default.</summary>
    public bool? IsCleared { get; init; }

    /// <summary>Family of the oil in its compressor; left out where it is not known.</summary>
    public OilKind? Oil { get; init; }

    /// <summary>Volume of the oil in its compressor, 0 to 1 m³; 150 mL (5 fl oz) by default (common practice, no source).</summary>
    public double? CompressorOilMilliliters { get; init; }

    /// <summary>Volume of the oil in its separator, 0 to 1 m³; none by default.</summary>
    public double? SeparatorOilMilliliters { get; init; }

    /// <summary>Running time since its oil was changed, 0 to 100 000 h; none by default.</summary>
    public double? RunningSinceOilChangeHours { get; init; }

    /// <summary>Running time after which its maker wants the oil changed, 1 h to 100 000 h; left out where it is not known.</summary>
    public double? OilChangeIntervalHours { get; init; }

    public static MachinePastDocument From(MachinePast past, FluidResolver? fluids)
    {
        BlendDocument? blend = past.Refrigerant is Fluid fluid ? BlendDocument.From(fluid, fluids) : null;
        return new()
        {
            Refrigerant = blend is null ? past.Refrigerant?.Designation : null,
            Blend = blend,
            IsCleared = past.IsCleared,
            Oil = past.Oil,
            CompressorOilMilliliters = Exact.Milliliters(past.CompressorOil),
            SeparatorOilMilliliters = Exact.Milliliters(past.SeparatorOil),
            RunningSinceOilChangeHours = Exact.Hours(past.RunningSinceOilChange),
            OilChangeIntervalHours = past.OilChangeInterval is Duration interval ? Exact.Hours(interval) : null,
        };
    }

    public MachinePast ToPast(DocumentNode node, FluidResolver? fluids)
    {
        Fluid? fluid = Refrigerant is null && Blend is null ? null : BlendDocument.ToFluid(Refrigerant, Blend, node, fluids);
        return node.Build(() =>
        {
            MachinePast past = new();
            return past with
            {
                Refrigerant = fluid,
                IsCleared = IsCleared ?? past.IsCleared,
                Oil = Oil,
                CompressorOil = CompressorOilMilliliters is double compressor ? Exact.SmallVolumeOf(compressor) : past.CompressorOil,
                SeparatorOil = SeparatorOilMilliliters is double separator ? Exact.SmallVolumeOf(separator) : past.SeparatorOil,
                RunningSinceOilChange = RunningSinceOilChangeHours is double running ? Exact.HoursOf(running) : past.RunningSinceOilChange,
                OilChangeInterval = OilChangeIntervalHours is double interval ? Exact.HoursOf(interval) : null,
            };
        });
    }
}
