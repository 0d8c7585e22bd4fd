using Refrigerant.Recovery.Estimation;

namespace Refrigerant.Recovery.Tests.Estimation.Parts;

/// <summary>A job that goes as the reduced model has it, read without noise: what the filters and the diagnosis say of it is a matter of theirs alone.</summary>
internal sealed class OwnTruth
{
    private readonly Workbench _bench;
    private ReducedParameters _parameters;
    private ReducedState _state;
    private double _shut = 1;

    public OwnTruth(Workbench bench, double charge = 1)
    {
        _bench = bench;
        _parameters = bench.Prior.Typical;
        _parameters.Charge *= charge;
        _parameters.WetShare = 0.2;
        _parameters.Warming = 0.4;
        _parameters.OilCapacity = 0;
        _state = new ReducedState { Temperature = bench.Told.Temperature, MetalTemperature = bench.Told.Temperature, WetTemperature = bench.Told.Temperature };
        Look(true);
    }

    public double Time { get; private set; }

    public ReducedState State => _state;

    public ReducedOutput Output { get; private set; }

    /// <summary>Share of its displacement that the machine has, and times its resistance that the hose has.</summary>
    public double Machine { get; set; } = 1;

    public double Hose { get; set; } = 1;

    /// <summary>What scale, kg, and gauge, Pa, show beyond what is.</summary>
    public double Pull { get; set; }

    public double GaugeOff { get; set; }

    public bool IsDrawing { get; set; } = true;

    /// <summary>Whether a valve before the gauge is shut: nothing comes, and the machine pulls the hose down by a third a second.</summary>
    public bool IsShut { get; set; }

    public double Left => _parameters.Charge - _state.Delivered;

    /// <summary>A second, or several, on.</summary>
    public EstimatorBlock Next(double seconds = 1)
    {
        ReducedParameters now = Now;
        var inputs = new ReducedInputs(_bench.Told.Temperature, IsDrawing && !IsShut);
        _bench.Model.Advance(ref _state, in now, in inputs, seconds, 0.5);
        Time += seconds;
        _shut = IsShut ? _shut * 0.6 : 1;
        Look(IsDrawing && !IsShut);
        return Workbench.Block(Time, seconds, gauge: (Output.SuctionPressure * _shut) - _bench.Prior.Atmosphere + GaugeOff, delivered: _state.Delivered + Pull, isDrawing: IsDrawing, air: _bench.Told.Temperature);
    }

    private ReducedParameters Now => _parameters with { Displacement = _parameters.Displacement * Machine, HoseResistance = _parameters.HoseResistance * Hose };

    private void Look(bool draws)
    {
        ReducedParameters now = Now;
        _bench.Model.Evaluate(in _state, in now, new ReducedInputs(_bench.Told.Temperature, draws), out ReducedOutput output);
        Output = output;
    }
}
