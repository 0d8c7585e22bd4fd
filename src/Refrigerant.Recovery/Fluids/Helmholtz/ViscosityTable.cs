using System;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// Viscosities of saturated liquid and vapor over temperature, interpolated as ln μ over x = sqrt(1 − T/Tc), in which they are smooth up to
/// the critical point: cubic between rows, straight towards the critical point. Below the coldest row liquid is continued straight in 1/T (after
/// Andrade 1934, Phil. Mag. 17, 497) and vapor straight in ln T.
/// </summary>
internal sealed class ViscosityTable
{
    private readonly double _criticalTemperature;
    private readonly double[] _x;
    private readonly double[] _temperature;
    private readonly double[] _logLiquid;
    private readonly double[] _logVapor;

    /// <param name="rows">T in K, liquid and vapor viscosity in Pa·s; at least four, ascending.</param>
    /// <param name="criticalTemperature">K, above the last row.</param>
    public ViscosityTable(double[,] rows, double criticalTemperature)
    {
        int n = rows.GetLength(0);
        _criticalTemperature = criticalTemperature;
        _x = new double[n];
        _temperature = new double[n];
        _logLiquid = new double[n];
        _logVapor = new double[n];
        for (int i = 0; i < n; i++)
        {
            _temperature[i] = rows[i, 0];
            _x[i] = X(rows[i, 0]);
            _logLiquid[i] = Math.Log(rows[i, 1]);
            _logVapor[i] = Math.Log(rows[i, 2]);
        }
    }

    /// <summary>Whether rows stand below and above the temperature.</summary>
    public bool Covers(double temperature) => temperature >= _temperature[0] && temperature <= _temperature[_temperature.Length - 1];

    /// <summary>Liquid and vapor viscosity, Pa·s; equal where their lines would cross before the critical point.</summary>
    public void At(double temperature, out double liquid, out double vapor)
    {
        int last = _x.Length - 1;
        double logLiquid, logVapor;
        if (temperature < _temperature[0])
        {
            logLiquid = Line(1 / _temperature[0], 1 / _temperature[1], _logLiquid[0], _logLiquid[1], 1 / temperature);
            logVapor = Line(
                Math.Log(_temperature[0]), Math.Log(_temperature[1]), _logVapor[0], _logVapor[1], Math.Log(temperature));
        }
        else if (temperature > _temperature[last])
        {
            double x = X(temperature);
            logLiquid = Line(_x[last], _x[last - 1], _logLiquid[last], _logLiquid[last - 1], x);
            logVapor = Line(_x[last], _x[last - 1], _logVapor[last], _logVapor[last - 1], x);
            if (logVapor > logLiquid)
            {
                logLiquid = logVapor = 0.5 * (logLiquid + logVapor);
            }
        }
        else
        {
            Interpolate(temperature, out logLiquid, out logVapor);
        }

        liquid = Math.Exp(logLiquid);
        vapor = Math.Exp(logVapor);
    }

    private static double Line(double x0, double x1, double y0, double y1, double x) => y0 + ((y1 - y0) * (x - x0) / (x1 - x0));

    private double X(double temperature) => Math.Sqrt(Math.Max(0, 1 - (temperature / _criticalTemperature)));

    /// <summary>Lagrange's cubic through the four nearest rows.</summary>
    private void Interpolate(double temperature, out double logLiquid, out double logVapor)
    {
        int i = 1;
        while (i < _x.Length - 3 && temperature > _temperature[i + 1])
        {
            i++;
        }

        double x = X(temperature);
        logLiquid = 0;
        logVapor = 0;
        for (int j = i - 1; j <= i + 2; j++)
        {
            double weight = 1;
            for (int k = i - 1; k <= i + 2; k++)
            {
                weight *= k == j ? 1 : (x - _x[k]) / (_x[j] - _x[k]);
            }

            logLiquid += weight * _logLiquid[j];
            logVapor += weight * _logVapor[j];
        }
    }
}
