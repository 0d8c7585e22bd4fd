using System;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// Reducing temperature and reducing molar volume of a mixture, with their first and second derivatives by composition
/// (Kunz and Wagner 2012, doi:10.1021/je300655b, equations 16 and 17):
/// <c>Y(x) = Σ x_i² Y_i + Σ_{i&lt;j} 2 β γ x_i x_j (x_i + x_j)/(β² x_i + x_j) Y_ij</c>.
/// </summary>
/// <remarks>
/// Y is taken as the homogeneous function of second degree that the formula is when the mole fractions are independent of each other,
/// so that derivatives by component densities follow without a constraint on their sum.
/// </remarks>
internal sealed class ReducingFunctions
{
    private readonly int _count;
    private readonly double[] _pureTemperature;
    private readonly double[] _pureVolume;
    private readonly double[] _betaT2;
    private readonly double[] _betaV2;
    private readonly double[] _factorT;
    private readonly double[] _factorV;

    /// <param name="temperatures">Reducing temperatures of the components, K.</param>
    /// <param name="densities">Reducing molar densities of the components, mol/m³.</param>
    /// <param name="pairs">Pairs (i, j) with i &lt; j, row by row.</param>
    public ReducingFunctions(double[] temperatures, double[] densities, BinaryPair[] pairs)
    {
        _count = temperatures.Length;
        _pureTemperature = temperatures;
        _pureVolume = new double[_count];
        for (int i = 0; i < _count; i++)
        {
            _pureVolume[i] = 1 / densities[i];
        }

        _betaT2 = new double[pairs.Length];
        _betaV2 = new double[pairs.Length];
        _factorT = new double[pairs.Length];
        _factorV = new double[pairs.Length];
        int k = 0;
        for (int i = 0; i < _count; i++)
        {
            for (int j = i + 1; j < _count; j++, k++)
            {
                BinaryPair pair = pairs[k];
                double root = Math.Pow(densities[i], -1.0 / 3) + Math.Pow(densities[j], -1.0 / 3);
                _betaT2[k] = pair.BetaT * pair.BetaT;
                _betaV2[k] = pair.BetaV * pair.BetaV;
                _factorT[k] = 2 * pair.BetaT * pair.GammaT * Math.Sqrt(temperatures[i] * temperatures[j]);
                _factorV[k] = 2 * pair.BetaV * pair.GammaV * (root * root * root / 8);
            }
        }
    }

    /// <summary>Reducing temperature, K, and its derivatives: <paramref name="gradient"/> of n and <paramref name="hessian"/> of n·n values.</summary>
    public double Temperature(double[] x, double[] gradient, double[] hessian) =>
        Evaluate(x, _pureTemperature, _betaT2, _factorT, gradient, hessian);

    /// <summary>Reducing molar volume, m³/mol, and its derivatives.</summary>
    public double Volume(double[] x, double[] gradient, double[] hessian) =>
        Evaluate(x, _pureVolume, _betaV2, _factorV, gradient, hessian);

    private double Evaluate(double[] x, double[] pure, double[] beta2, double[] factor, double[] gradient, double[] hessian)
    {
        int n = _count;
        double value = 0;
        for (int i = 0; i < n; i++)
        {
            value += x[i] * x[i] * pure[i];
            gradient[i] = 2 * x[i] * pure[i];
            hessian[(i * n) + i] = 2 * pure[i];
        }

        int k = 0;
        for (int i = 0; i < n; i++)
        {
            for (int j = i + 1; j < n; j++, k++)
            {
                double a = x[i];
                double b = x[j];
                double c = factor[k];
                double beta = beta2[k];

                // x_i x_j r with r = (a + b)/(β² a + b).
                double inverse = 1 / ((beta * a) + b);
                double r = (a + b) * inverse;
                double m = (1 - beta) * inverse * inverse;
                double ra = m * b;
                double rb = -m * a;
                m *= inverse;
                double raa = -2 * beta * m * b;
                double rbb = 2 * m * a;
                double rab = m * ((beta * a) - b);
                value += c * a * b * r;
                gradient[i] += c * b * (r + (a * ra));
                gradient[j] += c * a * (r + (b * rb));
                hessian[(i * n) + i] += c * b * ((2 * ra) + (a * raa));
                hessian[(j * n) + j] += c * a * ((2 * rb) + (b * rbb));
                double cross = c * (r + (a * ra) + (b * rb) + (a * b * rab));
                hessian[(i * n) + j] = cross;
                hessian[(j * n) + i] = cross;
            }
        }

        return value;
    }
}
