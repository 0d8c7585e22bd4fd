using System;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// A point of a mixture's phase boundary at a given temperature: a bulk phase of known composition and the first bubble, or the first
/// drop, in equilibrium with it. Newton on equal fugacities and equal pressures in the logarithms of the bulk's molar density and of the
/// component densities of the incipient phase (after Gernert, Jäger and Span 2014, Fluid Phase Equilib. 375, 209,
/// doi:10.1016/j.fluid.2014.05.012), with analytic derivatives, continued in temperature along the tangent.
/// </summary>
internal sealed class IncipientPhase
{
    /// <summary>Largest change of a logarithm in one step.</summary>
    private const double LargestStep = 0.7;

    /// <summary>Largest change of a logarithm at which the iteration has arrived: Newton's next error is its square.</summary>
    private const double Arrived = 1e-9;

    private const int MaximumIterations = 25;

    /// <summary>Largest change of a logarithm between the tangent's forecast and the point found; a larger one may be another branch.</summary>
    private const double LargestSurprise = 0.1;

    /// <summary>Two phases whose densities and compositions differ by less than this are one: the trivial solution.</summary>
    private const double SamePhase = 1e-5;

    private readonly int _n;
    private readonly double[] _y;
    private readonly double[] _tangent;
    private readonly double[] _jacobian;
    private readonly double[] _rhs;
    private readonly double[] _amounts;
    private double _bulkTemperature;

    public IncipientPhase(MixtureEquation equation, double[] composition)
    {
        _n = equation.Count;
        Bulk = new MixturePhase(equation);
        Bulk.SetComposition(composition);
        Incipient = new MixturePhase(equation);
        _y = new double[_n + 1];
        _tangent = new double[_n + 1];
        _jacobian = new double[(_n + 1) * (_n + 1)];
        _rhs = new double[_n + 1];
        _amounts = new double[_n];
    }

    /// <summary>The phase of the mixture's own composition.</summary>
    public MixturePhase Bulk { get; }

    /// <summary>The phase that just appears.</summary>
    public MixturePhase Incipient { get; }

    /// <summary>Temperature of the last point, K.</summary>
    public double Temperature { get; private set; }

    /// <summary>Pressure of the last point, Pa: that of the lighter phase, which is the better conditioned.</summary>
    public double Pressure => Bulk.Rho < Incipient.Rho ? Bulk.Pressure : Incipient.Pressure;

    /// <summary>Steps that the last solution took.</summary>
    public int Iterations { get; private set; }

    /// <summary>Gives the bulk phase another composition; what follows is a start.</summary>
    public void SetBulk(ReadOnlySpan<double> composition)
    {
        Bulk.SetComposition(composition);
        _bulkTemperature = 0;
    }

    /// <summary>Starts from estimates of both phases.</summary>
    /// <returns>Whether the point was found.</returns>
    public bool Start(double temperature, double bulkDensity, ReadOnlySpan<double> incipientDensities)
    {
        _y[0] = Math.Log(bulkDensity);
        for (int i = 0; i < _n; i++)
        {
            _y[i + 1] = Math.Log(incipientDensities[i]);
        }

        return Solve(temperature);
    }

    /// <summary>Follows the boundary from the last point to another temperature, in as many steps as it takes.</summary>
    /// <param name="temperature">K.</param>
    /// <param name="shortest">The shortest step, relative to the temperature, before it gives up.</param>
    /// <returns>Whether it arrived; if not, this is as far as it came.</returns>
    public bool MoveTo(double temperature, double shortest = 1e-6)
    {
        const int mostSteps = 300;
        Span<double> start = stackalloc double[_n + 1];
        Span<double> slope = stackalloc double[_n + 1];
        Span<double> forecast = stackalloc double[_n + 1];
        double step = temperature - Temperature;
        for (int k = 0; k < mostSteps && Temperature != temperature; k++)
        {
            double origin = Temperature;
            _y.CopyTo(start);
            _tangent.CopyTo(slope);
            double target = Math.Abs(step) >= Math.Abs(temperature - origin) ? temperature : origin + step;

            // Logarithms of densities are nearly straight in 1/T.
            double advance = (target - origin) * origin / target;
            for (int i = 0; i <= _n; i++)
            {
                _y[i] += slope[i] * advance;
            }

            _y.CopyTo(forecast);
            if (Solve(target) && Surprise(forecast) < LargestSurprise)
            {
                step *= 2;
                continue;
            }

            start.CopyTo(_y);
            slope.CopyTo(_tangent);
            Temperature = origin;
            step = (target - origin) / 4;
            if (Math.Abs(step) < shortest * origin)
            {
                break;
            }
        }

        return Temperature == temperature || Restore(Temperature);
    }

    private double Surprise(ReadOnlySpan<double> forecast)
    {
        double largest = 0;
        for (int i = 0; i <= _n; i++)
        {
            largest = Math.Max(largest, Math.Abs(_y[i] - forecast[i]));
        }

        return largest;
    }

    private bool Restore(double temperature)
    {
        _ = Solve(temperature);
        return false;
    }

    private bool Solve(double temperature)
    {
        if (_bulkTemperature != temperature)
        {
            Bulk.SetTemperature(temperature);
            _bulkTemperature = temperature;
        }

        for (Iterations = 1; Iterations <= MaximumIterations; Iterations++)
        {
            if (!Evaluate(temperature))
            {
                return false;
            }

            FillJacobian();
            FillResidual();
            if (!DenseSolve())
            {
                return false;
            }

            double largest = 0;
            for (int i = 0; i <= _n; i++)
            {
                largest = Math.Max(largest, Math.Abs(_rhs[i]));
            }

            double factor = largest > LargestStep ? LargestStep / largest : 1;
            for (int i = 0; i <= _n; i++)
            {
                _y[i] -= factor * _rhs[i];
            }

            if (largest < Arrived)
            {
                return Finish(temperature);
            }
        }

        return false;
    }

    private bool Evaluate(double temperature)
    {
        double total = 0;
        for (int i = 0; i < _n; i++)
        {
            _amounts[i] = Math.Exp(_y[i + 1]);
            total += _amounts[i];
        }

        double rho = Math.Exp(_y[0]);
        const double packed = 6;
        if (!(total > 0) || !(rho > 0) || rho > packed * Bulk.ReducingDensity)
        {
            return false;
        }

        Incipient.SetAmounts(_amounts);
        if (total > packed * Incipient.ReducingDensity)
        {
            return false;
        }

        Incipient.SetTemperature(temperature);
        Incipient.SetDensity(total);
        Bulk.SetDensity(rho);
        return true;
    }

    private bool Finish(double temperature)
    {
        if (!Evaluate(temperature))
        {
            return false;
        }

        double difference = Math.Abs(Math.Log(Bulk.Rho / Incipient.Rho));
        for (int i = 0; i < _n; i++)
        {
            difference = Math.Max(difference, Math.Abs(Bulk.X[i] - Incipient.X[i]));
        }

        if (difference < SamePhase || !(Pressure > 0))
        {
            return false;
        }

        FillJacobian();
        for (int i = 0; i < _n; i++)
        {
            _rhs[i] = (Incipient.LogPhiByT[i] - Bulk.LogPhiByT[i]) / temperature;
        }

        double scale = PressureScale;
        _rhs[_n] = ((Incipient.ZByT * Incipient.Rho) - (Bulk.ZByT * Bulk.Rho)) / (scale * temperature);
        if (!DenseSolve())
        {
            return false;
        }

        _rhs.CopyTo(_tangent, 0);
        Temperature = temperature;
        return true;
    }

    private double PressureScale => Math.Max(Bulk.Rho, Incipient.Rho);

    private void FillResidual()
    {
        for (int i = 0; i < _n; i++)
        {
            _rhs[i] = Math.Log(Bulk.X[i]) + _y[0] + Bulk.LogPhi[i] - _y[i + 1] - Incipient.LogPhi[i];
        }

        _rhs[_n] = ((Bulk.Z * Bulk.Rho) - (Incipient.Z * Incipient.Rho)) / PressureScale;
    }

    private void FillJacobian()
    {
        int width = _n + 1;
        double scale = PressureScale;
        for (int i = 0; i < _n; i++)
        {
            _jacobian[i * width] = Bulk.PressureBy[i];
            for (int j = 0; j < _n; j++)
            {
                _jacobian[(i * width) + j + 1] = -Incipient.X[j] * Incipient.Matrix[(i * _n) + j];
            }

            _jacobian[(i * width) + i + 1] -= 1;
        }

        _jacobian[_n * width] = Bulk.Rho * Bulk.Stiffness / scale;
        for (int j = 0; j < _n; j++)
        {
            _jacobian[(_n * width) + j + 1] = -Incipient.Rho * Incipient.X[j] * Incipient.PressureBy[j] / scale;
        }
    }

    private bool DenseSolve() => Numerics.DenseLinear.Solve(_jacobian, _rhs, _n + 1);
}
