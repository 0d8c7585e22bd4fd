using System;
using Refrigerant.Recovery.Equipment;
using Refrigerant.Recovery.Fluids;

namespace Refrigerant.Recovery.Processes;

/// <summary>The receiving cylinder: its pressure, and the heat it gives up; plain SI doubles.</summary>
internal sealed class CylinderProcess
{
    /// <summary>Molar gas constant, J/(mol·K) (SI definition).</summary>
    public const double GasConstant = 8.31446261815324;

    /// <summary>Specific heat of steel, J/(kg·K), from memory.</summary>
    private const double Steel = 480;

    /// <summary>Outer surface over volume to the power 2/3: an upright cylinder twice as high as wide has 5.8.</summary>
    private const double SurfaceFactor = 5.8;

    /// <summary>Free convection and radiation to still air, W/(m²·K): common practice, no source.</summary>
    private const double OuterCoefficient = 10;

    /// <summary>Condensing or boiling refrigerant on the wall inside, W/(m²·K): common practice, no source.</summary>
    private const double InnerCoefficient = 200;

    /// <summary>A cylinder is never quite empty: the vapor it starts with has at least this pressure, Pa: it keeps the equations regular.</summary>
    private const double EmptyPressure = 1000;

    /// <summary>Smallest share of the volume that gas is taken to fill, so that its pressure stays finite.</summary>
    private const double SmallestGasShare = 1e-3;

    private readonly VesselTracker _vessel;
    private readonly double _outer;
    private readonly double _inner;
    private readonly double _ambient;
    private readonly double _wallCapacity;
    private readonly double _gasMoles;

    public CylinderProcess(PropertyModel model, RecoveryCylinder cylinder, double ambient, double gasMoles)
    {
        _vessel = new VesselTracker(model);
        Volume = cylinder.InternalVolume.CubicMeters;
        double surface = SurfaceFactor * Math.Pow(Volume, 2.0 / 3);
        _outer = OuterCoefficient * surface;
        _inner = InnerCoefficient * surface;
        _wallCapacity = cylinder.TareWeight.Kilograms * Steel;
        _ambient = ambient;
        _gasMoles = gasMoles;
    }

    /// <summary>Internal volume, m³.</summary>
    public double Volume { get; }

    /// <summary>Pressure, other gases included, Pa.</summary>
    public double Pressure { get; private set; }

    /// <summary>Temperature of the refrigerant, K.</summary>
    public double Temperature => _vessel.Temperature;

    /// <summary>Share of the volume that liquid fills.</summary>
    public double LiquidVolumeFraction => _vessel.LiquidVolumeFraction;

    /// <summary>Density of the vapor, kg/m³.</summary>
    public double VaporDensity => _vessel.VaporDensity;

    /// <summary>Enthalpy of the vapor, J/kg.</summary>
    public double VaporEnthalpy => _vessel.VaporEnthalpy;

    /// <summary>Heat flow from the wall into the refrigerant, W.</summary>
    public double HeatFromWall { get; private set; }

    /// <summary>Heat flow from the ambient into the wall, W.</summary>
    public double HeatFromAmbient { get; private set; }

    /// <summary>Heat capacity of the wall, J/K.</summary>
    public double WallCapacity => _wallCapacity;

    /// <summary>Mass of vapor that an "empty" cylinder starts with, kg.</summary>
    public static double ResidualMass(PropertyModel model, double volume, double temperature)
    {
        double pressure = EmptyPressure;
        if (temperature < model.Range.MaximumSaturationTemperature && temperature >= model.Range.MinimumTemperature)
        {
            pressure = Math.Min(pressure, 0.5 * model.SaturationAtTemperature(temperature).Dew.Pressure);
        }

        return model.StateAt(temperature, pressure).Density * volume;
    }

    /// <summary>Evaluates the state; false outside the range of the equation of state.</summary>
    public bool Solve(double mass, double energy, double wallTemperature)
    {
        if (!(mass > 0) || !_vessel.Solve(mass / Volume, energy / mass))
        {
            return false;
        }

        double gasShare = Math.Max(SmallestGasShare, 1 - _vessel.LiquidVolumeFraction);
        Pressure = _vessel.Pressure + (_gasMoles * GasConstant * _vessel.Temperature / (Volume * gasShare));
        HeatFromWall = _inner * (wallTemperature - _vessel.Temperature);
        HeatFromAmbient = _outer * (_ambient - wallTemperature);
        return true;
    }
}
