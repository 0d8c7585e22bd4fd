using System;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>Viscosity of saturated liquid and vapor: ln μ over temperature, from tabulated values.</summary>
internal sealed class PureViscosity
{
    private readonly double[,] _rows;
    private readonly bool _isEstimate;

    private PureViscosity(double[,] rows, bool isEstimate)
    {
        _rows = rows;
        _isEstimate = isEstimate;
    }

    public static PureViscosity Create(PureEngine engine)
    {
        double[,]? rows = engine.Equation.Data.SaturationViscosity;
        return new PureViscosity(rows ?? new double[,] { { 200, 3e-4, 1e-5 }, { 300, 2e-4, 1e-5 } }, rows is null);
    }

    public SaturationViscosity At(double temperature)
    {
        int last = _rows.GetLength(0) - 1;
        int i = 0;
        while (i < last - 1 && temperature > _rows[i + 1, 0])
        {
            i++;
        }

        double w = (temperature - _rows[i, 0]) / (_rows[i + 1, 0] - _rows[i, 0]);
        return new SaturationViscosity(
            _rows[i, 1] * Math.Pow(_rows[i + 1, 1] / _rows[i, 1], w),
            _rows[i, 2] * Math.Pow(_rows[i + 1, 2] / _rows[i, 2], w),
            _isEstimate);
    }
}
