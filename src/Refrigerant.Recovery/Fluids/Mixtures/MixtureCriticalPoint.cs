using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// The critical point of a composition by the conditions of Heidemann and Khalil (1980, AIChE J. 26, 769, doi:10.1002/aic.690260510) in
/// Michelsen's form: the Hessian of the Helmholtz energy in the component densities, scaled by sqrt(x_i x_j), has a zero
/// eigenvalue, and its quadratic form along that eigenvector has no slope in the same direction.
/// </summary>
internal sealed class MixtureCriticalPoint
{
    /// <summary>Length of the step along the eigenvector, in units of sqrt(x_i), for the slope.</summary>
    private const double Step = 1e-4;

    private const int MaximumIterations = 60;

    private readonly MixturePhase _phase;
    private readonly int _n;
    private readonly double[] _composition;
    private readonly double[] _vector;
    private readonly double[] _work;
    private readonly double[] _amounts;

    public MixtureCriticalPoint(MixtureEquation equation, double[] composition)
    {
        _phase = new MixturePhase(equation);
        _n = equation.Count;
        _composition = composition;
        _vector = new double[_n];
        _work = new double[_n * _n];
        _amounts = new double[_n];
    }

    /// <summary>Critical temperature, K.</summary>
    public double Temperature { get; private set; }

    /// <summary>Critical pressure, Pa.</summary>
    public double Pressure { get; private set; }

    /// <summary>Critical molar density, mol/m³.</summary>
    public double Density { get; private set; }

    /// <summary>
    /// Finds the first critical point from the vapor side, along the limit of stability. Some published equations have a second one at a
    /// higher density, inside the two-phase region of the first.
    /// </summary>
    /// <returns>Whether one was found between 0.65 and 1.6 times the reducing density.</returns>
    public bool Find()
    {
        const double lowest = 0.65, highest = 1.6, step = 0.03;
        _phase.SetComposition(_composition);
        double reducing = _phase.ReducingDensity;
        double temperature = 1.08 * _phase.ReducingTemperature;

        // The slope is negative on the vapor side of the critical point and positive on its liquid side.
        double rho = lowest * reducing;
        double slope = Slope(rho, ref temperature);
        while (rho < highest * reducing)
        {
            double next = rho + (step * reducing);
            double nextSlope = Slope(next, ref temperature);
            if (slope < 0 && nextSlope >= 0)
            {
                return Refine(rho, next, slope, nextSlope, temperature);
            }

            rho = next;
            slope = nextSlope;
        }

        return false;
    }

    private bool Refine(double a, double b, double slopeA, double slopeB, double temperature)
    {
        // Regula falsi with the Illinois correction.
        for (int k = 0; k < MaximumIterations; k++)
        {
            double rho = ((a * slopeB) - (b * slopeA)) / (slopeB - slopeA);
            double s = Slope(rho, ref temperature);
            if (double.IsNaN(s))
            {
                return false;
            }

            bool done = Math.Abs(b - a) < 1e-9 * rho || Math.Abs(s) < 1e-9;
            if (s * slopeB < 0)
            {
                a = b;
                slopeA = slopeB;
            }
            else
            {
                slopeA *= 0.5;
            }

            b = rho;
            slopeB = s;
            if (done)
            {
                Temperature = temperature;
                Density = rho;
                _phase.SetComposition(_composition);
                _phase.SetTemperature(temperature);
                _phase.SetDensity(rho);
                Pressure = _phase.Pressure;
                return true;
            }
        }

        return false;
    }

    /// <summary>Slope of the quadratic form on the limit of stability at a density; the temperature of that limit is returned.</summary>
    private double Slope(double rho, ref double temperature)
    {
        temperature = StabilityLimit(rho, temperature);
        double eigenvalue = Eigenvalue(temperature, rho);
        return double.IsNaN(eigenvalue)
            ? double.NaN
            : (Quadratic(temperature, rho, Step) - Quadratic(temperature, rho, -Step)) / (2 * Step);
    }

    private double StabilityLimit(double rho, double guess)
    {
        double t = guess;
        double value = Eigenvalue(t, rho);
        double step = 0.001 * guess * (value > 0 ? -1 : 1);
        double other = t;
        double otherValue = value;
        for (int k = 0; k < MaximumIterations && otherValue * value > 0; k++)
        {
            t = other;
            value = otherValue;
            other = t + step;
            otherValue = Eigenvalue(other, rho);
            step *= 1.3;
        }

        for (int k = 0; k < MaximumIterations; k++)
        {
            double next = ((t * otherValue) - (other * value)) / (otherValue - value);
            double v = Eigenvalue(next, rho);
            double change = Math.Abs(next - other);
            if (v * otherValue < 0)
            {
                t = other;
                value = otherValue;
            }
            else
            {
                value *= 0.5;
            }

            other = next;
            otherValue = v;
            if (change < 1e-12 * next || v == 0)
            {
                break;
            }
        }

        return other;
    }

    private double Eigenvalue(double temperature, double rho)
    {
        _phase.SetComposition(_composition);
        _phase.SetTemperature(temperature);
        _phase.SetDensity(rho);
        for (int i = 0; i < _n; i++)
        {
            for (int j = 0; j < _n; j++)
            {
                _work[(i * _n) + j] = Math.Sqrt(_composition[i] * _composition[j]) * _phase.Matrix[(i * _n) + j];
            }

            _work[(i * _n) + i] += 1;
        }

        return SymmetricEigen.Smallest(_work, _vector, _n);
    }

    private double Quadratic(double temperature, double rho, double step)
    {
        for (int i = 0; i < _n; i++)
        {
            _amounts[i] = _composition[i] + (step * Math.Sqrt(_composition[i]) * _vector[i]);
        }

        double total = _phase.SetAmounts(_amounts);
        _phase.SetTemperature(temperature);
        _phase.SetDensity(rho * total);
        double sum = 0;
        for (int i = 0; i < _n; i++)
        {
            double ui = Math.Sqrt(_composition[i]) * _vector[i];
            sum += ui * ui / _amounts[i];
            for (int j = 0; j < _n; j++)
            {
                sum += ui * Math.Sqrt(_composition[j]) * _vector[j] * _phase.Matrix[(i * _n) + j] / total;
            }
        }

        return sum;
    }
}
