using System;
using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Mixtures;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Simulation.Contents;

/// <summary>What is in a rigid vessel at equilibrium: masses, volume and internal energy in, all that flows and balances need out. Plain SI doubles.</summary>
/// <remarks>
/// One instance, one vessel, one simulation: each solution starts from the last, and the same question is answered from memory. Where the
/// composition is followed there is one mass a component; else one mass, of the composition as charged, and what flows out has that composition too.
/// </remarks>
internal abstract class Content
{
    private readonly double[] _asked;
    private double _askedVolume;
    private double _askedEnergy;
    private bool _hasAnswer;
    private bool _isValid;

    protected Content(PropertyModel model, int components)
    {
        Model = model;
        Components = components;
        _asked = new double[components];
    }

    /// <summary>Number of masses: that of the components where the composition is followed, else one.</summary>
    public int Components { get; }

    public double Temperature { get; protected set; }

    /// <summary>Pressure of the refrigerant, Pa.</summary>
    public double Pressure { get; protected set; }

    /// <summary>Vapor mass fraction, 1 where there is no liquid.</summary>
    public double VaporFraction { get; protected set; }

    /// <summary>Density of what a vapor port draws, kg/m³.</summary>
    public double VaporDensity { get; protected set; }

    /// <summary>Enthalpy of what a vapor port draws, J/kg.</summary>
    public double VaporEnthalpy { get; protected set; }

    /// <summary>Share of the volume that liquid fills.</summary>
    public double LiquidVolumeFraction { get; protected set; }

    /// <summary>Enthalpy of what a liquid port draws, J/kg.</summary>
    public double LiquidEnthalpy { get; protected set; }

    /// <summary>Above zero while there is liquid, below zero once the vapor is superheated: it falls through zero with the last drop.</summary>
    public double LiquidMargin { get; protected set; }

    /// <summary>Mass of the last solution, kg.</summary>
    public double Mass { get; private set; }

    /// <summary>Liquid of the last solution, kg.</summary>
    public double LiquidMass => Mass * (1 - VaporFraction);

    protected PropertyModel Model { get; }

    /// <summary>The equilibrium of a fluid: a blend by its phases, whether its composition is followed or not.</summary>
    /// <param name="model">The fluid.</param>
    /// <param name="tracked">Whether the composition is followed; of no effect where the model has no components to follow.</param>
    /// <param name="start">What it held last, where that is known.</param>
    public static Content For(PropertyModel model, bool tracked, TrackedContent? start = null) => model switch
    {
        MixtureModel blend => new BlendContent(blend, tracked, start),
        _ when model.Composition.Count == 1 => new PureContent(model),
        _ => new ModelContent(model),
    };

    /// <summary>Whether a fluid's composition can be followed.</summary>
    public static bool CanTrack(PropertyModel model) => model is MixtureModel;

    /// <summary>Solves the state; false where it is outside the range of the equation of state.</summary>
    /// <param name="state">All states.</param>
    /// <param name="first">Place of the first mass; the others follow.</param>
    /// <param name="volume">m³.</param>
    /// <param name="energy">Internal energy, J.</param>
    public bool Solve(double[] state, int first, double volume, double energy)
    {
        ReadOnlySpan<double> masses = state.AsSpan(first, Components);
        if (_hasAnswer && _askedEnergy == energy && _askedVolume == volume && masses.SequenceEqual(_asked))
        {
            return _isValid;
        }

        masses.CopyTo(_asked);
        _askedEnergy = energy;
        _askedVolume = volume;
        _hasAnswer = true;
        _isValid = TrySolve(masses, volume, energy);
        return _isValid;
    }

    /// <summary>Mass fractions of what a vapor port draws; empty where the composition is not followed.</summary>
    public virtual ReadOnlySpan<double> VaporComposition => default;

    /// <summary>Mass fractions of what a liquid port draws; empty where the composition is not followed.</summary>
    public virtual ReadOnlySpan<double> LiquidComposition => default;

    /// <summary>What it holds, to start the next simulation from; null where the composition is not followed.</summary>
    public virtual TrackedContent? Snapshot() => null;

    /// <summary>The bulk and its phases at the last solution.</summary>
    public abstract VesselPoint ToVesselPoint();

    protected abstract bool Find(ReadOnlySpan<double> masses, double mass, double volume, double energy);

    private bool TrySolve(ReadOnlySpan<double> masses, double volume, double energy)
    {
        double mass = 0;
        foreach (double part in masses)
        {
            if (!(part >= 0))
            {
                return false;
            }

            mass += part;
        }

        if (!(mass > 0) || !(volume > 0) || !Require.IsFinite(energy))
        {
            return false;
        }

        Mass = mass;
        try
        {
            return Find(masses, mass, volume, energy);
        }
        catch (PropertyRangeException)
        {
            return false;
        }
        catch (ConvergenceException)
        {
            return false;
        }
    }
}
