using System;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;

namespace Refrigerant.Recovery.Simulation.Contents;

/// <summary>A blend in a vessel by the equilibrium of its phases: one way to the state, whether the composition is followed or fixed.</summary>
/// <remarks>Fixed means only that the amounts stay in the proportion of the blend as charged: what flows out takes that composition with it.</remarks>
internal sealed class BlendContent : Content
{
    private readonly TrackedVessel _vessel;
    private readonly PropertyRange _range;
    private readonly bool _tracked;
    private readonly double[] _amounts;
    private readonly double[] _molarMasses;
    private readonly double[] _asCharged;
    private readonly double[] _vapor;
    private readonly double[] _liquid;

    public BlendContent(MixtureModel model, bool tracked, TrackedContent? start)
        : base(model, tracked ? model.Composition.Count : 1)
    {
        _vessel = new TrackedVessel(model, start);
        _range = model.Range;
        _tracked = tracked;
        int n = model.Composition.Count;
        _amounts = new double[n];
        _molarMasses = new double[n];
        _asCharged = new double[n];
        _vapor = new double[tracked ? n : 0];
        _liquid = new double[tracked ? n : 0];
        for (int i = 0; i < n; i++)
        {
            _molarMasses[i] = _vessel.MolarMass(i);
            _asCharged[i] = model.Composition[i].MassFraction;
        }
    }

    public override ReadOnlySpan<double> VaporComposition => _vapor;

    public override ReadOnlySpan<double> LiquidComposition => _liquid;

    public override TrackedContent? Snapshot() => _tracked ? _vessel.Snapshot() : null;

    public override VesselPoint ToVesselPoint() => _vessel.Snapshot().ToVesselPoint();

    protected override bool Find(ReadOnlySpan<double> masses, double mass, double volume, double energy)
    {
        for (int i = 0; i < _amounts.Length; i++)
        {
            _amounts[i] = (_tracked ? masses[i] : _asCharged[i] * mass) / _molarMasses[i];
        }

        _vessel.SolveAtEnergy(_amounts, volume, energy);
        if (!(_vessel.Temperature >= _range.MinimumTemperature && _vessel.Temperature <= _range.MaximumTemperature))
        {
            return false;
        }

        bool hasVapor = _vessel.Vapor.Amount > 0;
        bool hasLiquid = _vessel.Liquid.Amount > 0;
        PhaseContent vapor = hasVapor ? _vessel.Vapor : _vessel.Liquid;
        PhaseContent liquid = hasLiquid ? _vessel.Liquid : _vessel.Vapor;
        Temperature = _vessel.Temperature;
        Pressure = _vessel.Pressure;
        VaporFraction = !hasLiquid ? 1 : !hasVapor ? 0 : vapor.Mass / (vapor.Mass + liquid.Mass);
        VaporDensity = vapor.Density;
        VaporEnthalpy = vapor.Enthalpy;
        LiquidEnthalpy = liquid.Enthalpy;
        LiquidVolumeFraction = !hasLiquid ? 0 : !hasVapor ? 1 : liquid.Volume / volume;
        LiquidMargin = _vessel.LiquidMargin;
        if (_tracked)
        {
            ToMass(hasVapor ? _vessel.VaporFractions : _vessel.LiquidFractions, _vapor);
            ToMass(hasLiquid ? _vessel.LiquidFractions : _vessel.VaporFractions, _liquid);
        }

        return Pressure > 0;
    }

    private void ToMass(ReadOnlySpan<double> moleFractions, double[] massFractions)
    {
        double sum = 0;
        for (int i = 0; i < massFractions.Length; i++)
        {
            massFractions[i] = moleFractions[i] * _molarMasses[i];
            sum += massFractions[i];
        }

        for (int i = 0; i < massFractions.Length; i++)
        {
            massFractions[i] /= sum;
        }
    }
}
