using System;
using Refrigerant.Recovery.Numerics;
using Refrigerant.Recovery.Planning;

namespace Refrigerant.Recovery.Estimation;

/// <summary>
/// Whether vapor flows through the machine by itself: while the cylinder's pressure is below the appliance's, its valves stand open, and the gauge shows the cylinder. The discharge
/// pressure tells; where it is not read, what the cylinder holds does as long as that is all vapor, with ρ = m/V at the temperature of the air. Fixed memory.
/// </summary>
internal sealed class PassingVapor
{
    /// <summary>Share of the density of saturated vapor up to which the pressure of what a cylinder holds is known from its mass.</summary>
    private const double Unsaturated = 0.9;

    /// <summary>Share of that pressure, and kg of the content, by which it may be off: the cylinder's temperature is not known, its tare weight and the pull of hoses only so well.</summary>
    private const double Known = 0.1;

    private const double ContentKnown = 0.03;

    /// <summary>Share of the pressure that the machine alone would pull to at its inlet above which the gauge need not show the cylinder.</summary>
    private const double ByMachine = 0.93;

    /// <summary>Blocks in a row that do not agree after which it is over: it begins only where the machine starts, or with another cylinder.</summary>
    private const int Over = 3;

    private readonly SaturationTable _table;
    private readonly double _atmosphere;
    private readonly double _limit;
    private readonly double[] _volume;
    private readonly bool _passes;
    private int _off;
    private int _cylinder;

    public PassingVapor(RecoveryJob job, SaturationTable table, double gaugeLimit)
    {
        _table = table;
        _atmosphere = job.Barometer.Pressure.Pascals;
        _limit = gaugeLimit;
        _passes = job.Machine.GasPassesThrough;
        _volume = new double[job.Cylinders.Count];
        for (int i = 0; i < _volume.Length; i++)
        {
            _volume[i] = job.Cylinders[i].InternalVolume.CubicMeters;
        }
    }

    /// <summary>Whether vapor passes.</summary>
    /// <param name="isDrawing">Whether the machine runs with its valves open.</param>
    /// <param name="gauge">Gauge pressure at its inlet, Pa, any number.</param>
    /// <param name="discharge">Gauge pressure at its outlet, Pa; not a number where it was not read.</param>
    /// <param name="cylinder">Number of the cylinder in the job's list.</param>
    /// <param name="content">What it holds, kg; not a number where that is not known.</param>
    /// <param name="air">Temperature of the air, K.</param>
    /// <param name="expected">Absolute pressure at its inlet where it draws alone, as it is estimated, Pa; not a number where it is not.</param>
    public bool Check(bool isDrawing, double gauge, double discharge, int cylinder, double content, double air, double expected)
    {
        if (!isDrawing || cylinder != _cylinder)
        {
            _off = 0;
            _cylinder = cylinder;
        }

        if (!isDrawing)
        {
            return false;
        }

        if (Require.IsFinite(discharge))
        {
            return gauge > discharge - _limit;
        }

        if (_off >= Over || !_passes || !Require.IsFinite(gauge))
        {
            return false;
        }

        bool isLike = IsLikeCylinder(gauge + _atmosphere, cylinder, content, air, expected);
        _off = isLike ? 0 : _off + 1;
        return isLike;
    }

    /// <summary>Absolute pressure in a cylinder that holds vapor alone, Pa; not a number where it holds more, or that is not known.</summary>
    /// <param name="cylinder">Its number in the job's list.</param>
    /// <param name="content">What it holds, kg.</param>
    /// <param name="air">Temperature of the air, K.</param>
    public double CylinderPressure(int cylinder, double content, double air) => CylinderPressure(cylinder, content, air, out _);

    private bool IsLikeCylinder(double seen, int cylinder, double content, double air, double expected)
    {
        double pressure = CylinderPressure(cylinder, content, air, out double perKilogram);
        double off = (Known * pressure) + (ContentKnown * perKilogram) + _limit;
        return Math.Abs(seen - pressure) < off && !(seen > ByMachine * expected);
    }

    private double CylinderPressure(int cylinder, double content, double air, out double perKilogram)
    {
        perKilogram = 0;
        if (cylinder >= _volume.Length || !Require.IsFinite(content))
        {
            return double.NaN;
        }

        _table.At(air, out SaturationValues at);
        double share = Math.Max(0, content) / (_volume[cylinder] * at.VaporDensity);

        // Compressibility falls about linearly with density from one to that of saturated vapor.
        perKilogram = _table.GasConstant * air * (1 + ((at.Compressibility - 1) * share)) / _volume[cylinder];
        return share > Unsaturated ? double.NaN : Math.Max(0, content) * perKilogram;
    }
}
