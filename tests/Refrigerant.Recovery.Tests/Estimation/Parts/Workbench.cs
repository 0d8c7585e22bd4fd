using Refrigerant.Recovery.Estimation;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Planning;
using Refrigerant.Recovery.Tests.Estimation.Truths;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>One invented job, and what the parts of the estimator need of it.</summary>
internal sealed class Workbench
{
    public static readonly Told Typical = new()
    {
        Fluid = "R-134a",
        Charge = 6,
        Volume = 0.018,
        Temperature = 295,
        Outer = 40,
        Metal = 20_000,
        Displacement = 5e-4,
        HoseResistance = 3e9,
        Oil = 0,
        Level = 7e4,
        Atmosphere = 100_000,
    };

    public Workbench(Told? told = null)
    {
        Told = told ?? Typical;
        Job = Told.Job();
        Table = new SaturationTable(Fluid.Get(Told.Fluid).Model);
        Model = new ReducedModel(Table);
        Prior = EstimatorPrior.From(Job, Table, Told.Instruments(), Told.Options(), Told.Level);
        Machine = new ToldMachine(Table, Prior);
    }

    public Told Told { get; }

    public RecoveryJob Job { get; }

    public SaturationTable Table { get; }

    public ReducedModel Model { get; }

    public EstimatorPrior Prior { get; }

    public ToldMachine Machine { get; }

    /// <summary>A block of the machine drawing, with what is not given not read.</summary>
    public static EstimatorBlock Block(double time, double duration = 1, double gauge = double.NaN, double delivered = double.NaN, bool isDrawing = true, double air = 295) => new()
    {
        Time = time,
        Duration = duration,
        Gauge = gauge,
        Delivered = delivered,
        AirTemperature = air,
        IsDrawing = isDrawing,
        PipeTemperature = double.NaN,
        CondensingTemperature = double.NaN,
    };
}
