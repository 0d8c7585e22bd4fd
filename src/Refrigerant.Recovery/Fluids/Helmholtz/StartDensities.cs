using System;

namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// Densities to start from away from saturation, from the saturated states and how stiff they are: of vapor by a virial equation of three terms with the
/// pressure and the slope of saturated vapor, of liquid by Murnaghan's isotherm (1944, Proc. Natl. Acad. Sci. 30, 244, doi:10.1073/pnas.30.9.244) with the
/// slope and the curvature of saturated liquid. Immutable. All densities in one unit.
/// </summary>
internal sealed class StartDensities
{
    /// <summary>Relative density step of the difference that gives the curvature.</summary>
    public const double Step = 1e-3;

    /// <summary>Half widths of a piece kept away from the critical point, where the slopes vanish.</summary>
    private const double Distance = 6;

    private const int Rounds = 3;

    private readonly CurveTable _table;
    private readonly double _lowest;
    private readonly double _highest;
    private readonly double _piecesPerKelvin;

    /// <param name="lowest">Lower end of the saturation curves, K.</param>
    /// <param name="highest">Their upper end, K.</param>
    /// <param name="pieces">Into how many pieces that is divided.</param>
    /// <param name="stiffness">(∂p/∂ρ)/(RT) at a temperature of saturated vapor, of saturated liquid and of liquid denser by <see cref="Step"/>.</param>
    public StartDensities(double lowest, double highest, int pieces, Func<double, (double Vapor, double Liquid, double Denser)> stiffness)
    {
        _lowest = lowest;
        double width = (highest - lowest) / pieces;
        _piecesPerKelvin = 1 / width;
        _table = new CurveTable(pieces);
        Span<double> values = stackalloc double[CurveTable.Order * CurveTable.Count];
        values.Clear();
        for (double low = lowest; highest - low - width > 0.5 * Distance * width; low += width)
        {
            for (int i = 0; i < CurveTable.Order; i++)
            {
                (double vapor, double liquid, double denser) = stiffness(CurveTable.Node(i, low, low + width));
                values[i * CurveTable.Count] = vapor;
                values[(i * CurveTable.Count) + 1] = liquid;
                values[(i * CurveTable.Count) + 2] = 1 + (((denser / liquid) - 1) / Step);
            }

            _table.Add(low, low + width, values);
        }

        _highest = lowest + (_table.Pieces * width);
    }

    /// <summary>Whether there is a start at a temperature.</summary>
    public bool Covers(double temperature) => temperature >= _lowest && temperature < _highest;

    /// <summary>Vapor at a temperature and a pressure.</summary>
    /// <param name="temperature">K.</param>
    /// <param name="saturated">Density of saturated vapor.</param>
    /// <param name="saturatedPerRt">p/(RT) of it.</param>
    /// <param name="perRt">p/(RT).</param>
    /// <param name="curvature">Half of the relative change of the isotherm's slope with the logarithm of density, there.</param>
    public double Vapor(double temperature, double saturated, double saturatedPerRt, double perRt, out double curvature)
    {
        double stiffness = Evaluate(temperature).First;
        double z = saturatedPerRt / saturated;
        double b = (3 * z) - stiffness - 2, c = stiffness - (2 * z) + 1;
        double target = perRt / saturated;
        double x = 2 * target / (1 + Math.Sqrt(Math.Max(0, 1 + (4 * (z - 1) * target))));
        double slope = 1;
        for (int round = 0; round < Rounds; round++)
        {
            slope = 1 + (x * ((2 * b) + (3 * c * x)));
            x -= ((x * (1 + (x * (b + (c * x))))) - target) / slope;
        }

        curvature = x * (b + (3 * c * x)) / slope;
        return x * saturated;
    }

    /// <summary>Liquid at a temperature and a pressure.</summary>
    /// <param name="temperature">K.</param>
    /// <param name="saturated">Density of saturated liquid.</param>
    /// <param name="saturatedPerRt">p/(RT) of it.</param>
    /// <param name="perRt">p/(RT).</param>
    /// <param name="curvature">Half of the relative change of the isotherm's slope with the logarithm of density, there.</param>
    public double Liquid(double temperature, double saturated, double saturatedPerRt, double perRt, out double curvature)
    {
        CurveValues v = Evaluate(temperature);
        double n = v.Third;
        curvature = 0.5 * (n - 1);
        double growth = 1 + (n * (perRt - saturatedPerRt) / (saturated * v.Second));
        return saturated * Exponential.Of(NaturalLogarithm.Of(growth) / n);
    }

    private CurveValues Evaluate(double temperature)
    {
        _table.EvaluateFirst(Math.Min((int)((temperature - _lowest) * _piecesPerKelvin), _table.Pieces - 1), temperature, out CurveValues values);
        return values;
    }
}
