using System;
using Refrigerant.Recovery.Equipment;

namespace Refrigerant.Recovery.Simulation.Vessels;

/// <summary>The steel of a cylinder: one temperature, between the refrigerant and the air or a bath.</summary>
/// <remarks>Outside: natural convection (<see cref="StillAir"/>) and radiation, 4·ε·σ·T³, linear about the air's temperature. Inside: condensing or boiling.</remarks>
internal sealed class CylinderShell : Shell
{
    /// <summary>Specific heat of steel, J/(kg·K), from memory.</summary>
    private const double Steel = 480;

    /// <summary>Outer surface over volume to the power 2/3: an upright cylinder twice as high as wide has 5.8.</summary>
    private const double SurfaceFactor = 5.8;

    /// <summary>Height of an upright cylinder twice as high as wide over its volume to the power 1/3.</summary>
    private const double HeightFactor = 1.37;

    /// <summary>Difference to the air at which convection is taken, K: common practice, no source.</summary>
    private const double UsualDifference = 15;

    /// <summary>Emissivity of paint, from memory, times the Stefan–Boltzmann constant, W/(m²·K⁴).</summary>
    private const double Radiating = 0.9 * 5.670374e-8;

    /// <summary>Condensing or boiling refrigerant on the wall inside, W/(m²·K): common practice, no source.</summary>
    private const double InnerCoefficient = 200;

    private readonly double _capacity;
    private readonly double _inner;
    private readonly double _outer;
    private readonly double _surroundings;
    private int _wall;

    public CylinderShell(RecoveryCylinder cylinder, double surroundings)
    {
        double surface = SurfaceFactor * Math.Pow(cylinder.InternalVolume.CubicMeters, 2.0 / 3);
        double height = HeightFactor * Math.Pow(cylinder.InternalVolume.CubicMeters, 1.0 / 3);
        _outer = surface * (StillAir.Upright(height, surroundings + UsualDifference, surroundings) + (4 * Radiating * surroundings * surroundings * surroundings));
        _inner = InnerCoefficient * surface;
        _capacity = cylinder.TareWeight.Kilograms * Steel;
        _surroundings = surroundings;
    }

    public override void AddStates(SlotLayout layout, string vessel) => _wall = layout.State(vessel, "wall, temperature");

    public override void SetScales(double[] scale) => scale[_wall] = 1;

    public void Initialize(double[] state, double wall) => state[_wall] = wall;

    public override bool Solve(double[] state, double liquid, double vapor, double level, in SimulationInputs inputs)
    {
        double wall = state[_wall];
        WetTemperature = wall;
        DryTemperature = wall;
        HeatToLiquid = _inner * (wall - liquid);
        HeatFromOutside = _outer * inputs.CylinderFactor * ((inputs.CylinderSurroundings ?? inputs.AirTemperature ?? _surroundings) - wall);
        return wall > 0;
    }

    public override void Derive(double[] derivatives) => derivatives[_wall] = (HeatFromOutside - HeatToLiquid) / _capacity;

    public override double Stored(double[] state) => _capacity * state[_wall];
}
