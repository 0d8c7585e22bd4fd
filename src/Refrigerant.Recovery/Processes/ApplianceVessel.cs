using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids.Mixtures;

namespace Refrigerant.Recovery.Processes;

/// <summary>The refrigerant in an appliance while it is simulated: from the state vector to what the balances need; plain SI doubles.</summary>
internal abstract class ApplianceVessel
{
    public abstract double Temperature { get; }

    public abstract double Pressure { get; }

    /// <summary>Vapor mass fraction, 1 where there is no liquid.</summary>
    public abstract double VaporFraction { get; }

    /// <summary>Density of what a vapor port draws, kg/m³.</summary>
    public abstract double VaporDensity { get; }

    /// <summary>Enthalpy of what a vapor port draws, J/kg.</summary>
    public abstract double VaporEnthalpy { get; }

    /// <summary>Above zero while there is liquid, below zero once the vapor is superheated: it falls through zero with the last drop.</summary>
    public abstract double LiquidMargin { get; }

    /// <summary>Number of further states behind those of <see cref="RecoverySystem"/>.</summary>
    public virtual int StateCount => 0;

    /// <summary>What is in it at the last solution, where its composition is followed.</summary>
    public virtual TrackedContent? Content => null;

    /// <summary>The vessel for a stage that starts from a state: with its composition followed where that is asked for, or was followed before.</summary>
    public static ApplianceVessel For(Appliance appliance, ApplianceState start, CompositionMode mode)
    {
        double volume = appliance.InternalVolume.CubicMeters;
        return appliance.Fluid.Model is MixtureModel blend && (mode == CompositionMode.Tracked || start.Content is not null)
            ? new TrackedBlend(blend, volume, start)
            : new BulkVessel(appliance.Fluid.Model, volume);
    }

    /// <summary>Solves the state; false where it is outside the range of the equation of state.</summary>
    public abstract bool Solve(double[] state);

    /// <summary>Writes the further states of the start.</summary>
    public virtual void Initialize(double[] state)
    {
    }

    /// <summary>Size of a further state below which its error does not matter.</summary>
    public virtual double AbsoluteScale(int index) => double.PositiveInfinity;

    /// <summary>Writes the derivatives of the further states.</summary>
    /// <param name="flow">What is drawn, kg/s.</param>
    /// <param name="fromOil">What comes out of the oil, kg/s.</param>
    /// <param name="derivatives">All derivatives.</param>
    public virtual void Derivatives(double flow, double fromOil, double[] derivatives)
    {
    }
}
