using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Processes;

/// <summary>Refrigerant of one composition: a pure fluid, or a blend as charged.</summary>
internal sealed class BulkVessel : ApplianceVessel
{
    private readonly VesselTracker _tracker;
    private readonly double _volume;

    public BulkVessel(PropertyModel model, double volume)
    {
        _tracker = new VesselTracker(model);
        _volume = volume;
    }

    public override double Temperature => _tracker.Temperature;

    public override double Pressure => _tracker.Pressure;

    public override double VaporFraction => _tracker.VaporFraction;

    public override double VaporDensity => _tracker.VaporDensity;

    public override double VaporEnthalpy => _tracker.VaporEnthalpy;

    public override double LiquidMargin => _tracker.LiquidMargin;

    public override bool Solve(double[] state)
    {
        double mass = state[RecoverySystem.Mass];
        return _tracker.Solve(mass / _volume, state[RecoverySystem.Energy] / mass);
    }
}
