using System;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Processes;

/// <summary>A blend whose components are accounted for one by one.</summary>
/// <remarks>
/// dm_i/dt = w_i·ṁ_oil − w″_i·ṁ with the mass fractions w″ of the vapor in equilibrium at the present amounts, volume and internal energy,
/// and w of the blend as charged: what oil gives off counts as having that composition. What each component gives away is integrated beside it.
/// </remarks>
internal sealed class TrackedBlend : ApplianceVessel
{
    private const int First = RecoverySystem.FreeOut + 1;

    /// <summary>Components smaller than this share of the whole charge need no relative accuracy.</summary>
    private const double SmallShare = 1e-4;

    private readonly TrackedVessel _vessel;
    private readonly PropertyRange _range;
    private readonly double _volume;
    private readonly double[] _amounts;
    private readonly double[] _start;
    private readonly double[] _asCharged;
    private readonly double[] _drawn;
    private readonly double _scale;

    public TrackedBlend(MixtureModel model, double volume, ApplianceState start)
    {
        _vessel = new TrackedVessel(model, start.Content);
        _range = model.Range;
        _volume = volume;
        int n = _vessel.Count;
        _amounts = new double[n];
        _start = new double[n];
        _asCharged = new double[n];
        _drawn = new double[n];
        _scale = SmallShare * start.Kilograms;
        for (int i = 0; i < n; i++)
        {
            _asCharged[i] = model.Composition[i].MassFraction;
            _start[i] = start.Content is TrackedContent content ? content.Amounts[i] * _vessel.MolarMass(i) : _asCharged[i] * start.Kilograms;
        }
    }

    public override double Temperature => _vessel.Temperature;

    public override double Pressure => _vessel.Pressure;

    public override double VaporFraction => _vessel.Vapor.Mass / (_vessel.Liquid.Mass + _vessel.Vapor.Mass);

    public override double VaporDensity => Outlet.Density;

    public override double VaporEnthalpy => Outlet.Enthalpy;

    public override double LiquidMargin => _vessel.LiquidMargin;

    public override int StateCount => 2 * _amounts.Length;

    public override TrackedContent? Content => _vessel.Snapshot();

    private bool HasVapor => _vessel.Vapor.Amount > 0;

    private PhaseContent Outlet => HasVapor ? _vessel.Vapor : _vessel.Liquid;

    public override void Initialize(double[] state) => _start.CopyTo(state, First);

    public override double AbsoluteScale(int index) => index < First + _amounts.Length ? _scale : double.PositiveInfinity;

    public override bool Solve(double[] state)
    {
        for (int i = 0; i < _amounts.Length; i++)
        {
            _amounts[i] = state[First + i] / _vessel.MolarMass(i);
        }

        if (!Require.IsFinite(state[RecoverySystem.Energy]))
        {
            return false;
        }

        _vessel.SolveAtEnergy(_amounts, _volume, state[RecoverySystem.Energy]);
        return _vessel.Temperature >= _range.MinimumTemperature && _vessel.Temperature <= _range.MaximumTemperature;
    }

    public override void Derivatives(double flow, double fromOil, double[] derivatives)
    {
        ReadOnlySpan<double> fractions = HasVapor ? _vessel.VaporFractions : _vessel.LiquidFractions;
        double molarMass = 0;
        for (int i = 0; i < _drawn.Length; i++)
        {
            _drawn[i] = fractions[i] * _vessel.MolarMass(i);
            molarMass += _drawn[i];
        }

        for (int i = 0; i < _drawn.Length; i++)
        {
            double drawn = flow * _drawn[i] / molarMass;
            derivatives[First + i] = (_asCharged[i] * fromOil) - drawn;
            derivatives[First + _drawn.Length + i] = drawn;
        }
    }

    /// <summary>Largest share of a component that is neither left nor drawn.</summary>
    public double LargestImbalance(double[] before, double[] after)
    {
        double largest = 0;
        double fromOil = before[RecoverySystem.Dissolved] - after[RecoverySystem.Dissolved];
        for (int i = 0; i < _start.Length; i++)
        {
            double missing = after[First + i] + after[First + _start.Length + i] - _start[i] - (_asCharged[i] * fromOil);
            largest = Math.Max(largest, Math.Abs(missing) / (_start[i] + (_asCharged[i] * fromOil)));
        }

        return largest;
    }
}
