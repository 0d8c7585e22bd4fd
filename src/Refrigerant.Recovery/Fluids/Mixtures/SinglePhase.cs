using System;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// The content of a closed vessel as one phase, stable or not: at a temperature, or at the temperature that its internal energy has. A scratchpad like the
/// <see cref="MixturePhase"/> that it sets; the next search starts from where the last one's derivatives lead.
/// </summary>
internal sealed class SinglePhase
{
    /// <summary>Relative temperature step after which the rest follows to first order: the error left is of the size of its square.</summary>
    private const double Arrived = 1e-6;

    /// <summary>Largest relative temperature step.</summary>
    private const double LargestStep = 0.1;

    private const int MaximumIterations = 50;

    private readonly double[] _amounts;
    private double _total;
    private double _volume;
    private bool _isSolved;

    public SinglePhase(MixtureEquation equation)
    {
        Phase = new MixturePhase(equation);
        _amounts = new double[equation.Count];
    }

    /// <summary>The phase at the solution, caloric properties included.</summary>
    public MixturePhase Phase { get; }

    /// <summary>Sets the phase to a temperature.</summary>
    public void SetTemperature(ReadOnlySpan<double> amounts, double volume, double temperature)
    {
        Take(amounts, volume);
        Evaluate(temperature);
        _isSolved = true;
    }

    /// <summary>Sets the phase to the temperature of an energy.</summary>
    /// <param name="amounts">mol.</param>
    /// <param name="volume">m³.</param>
    /// <param name="energy">J.</param>
    /// <param name="near">A temperature to start from, K, where there is no last solution.</param>
    /// <returns>Whether one was found.</returns>
    public bool TrySetEnergy(ReadOnlySpan<double> amounts, double volume, double energy, double near)
    {
        double temperature = _isSolved ? Forecast(amounts, volume, energy) : near;
        if (!(Math.Abs(temperature - near) < LargestStep * near))
        {
            temperature = near;
        }

        _isSolved = false;
        Take(amounts, volume);
        for (int k = 0; k < MaximumIterations; k++)
        {
            Evaluate(temperature);
            double step = ((energy / _total) - Phase.Energy) / Phase.HeatCapacity;
            if (!(Phase.HeatCapacity > 0) || double.IsNaN(step))
            {
                return false;
            }

            temperature += Math.Max(-LargestStep * temperature, Math.Min(LargestStep * temperature, step));
            if (Math.Abs(step) < Arrived * temperature)
            {
                Phase.Move(amounts, volume, temperature);
                _isSolved = true;
                return true;
            }
        }

        return false;
    }

    private void Take(ReadOnlySpan<double> amounts, double volume)
    {
        amounts.CopyTo(_amounts);
        _volume = volume;
        _total = 0;
        foreach (double amount in amounts)
        {
            _total += amount;
        }
    }

    private void Evaluate(double temperature)
    {
        Phase.SetAmounts(_amounts);
        Phase.SetTemperature(temperature);
        Phase.SetDensity(_total / _volume);
        Phase.SetIdealGas();
    }

    private double Forecast(ReadOnlySpan<double> amounts, double volume, double energy)
    {
        double rt = MixtureEquation.GasConstant * Phase.T;
        double change = energy - (_total * Phase.Energy) - (rt * Phase.Rho * (Phase.ZByT - Phase.Z) * (volume - _volume));
        for (int i = 0; i < _amounts.Length; i++)
        {
            change -= Phase.EnergyBy(i) * (amounts[i] - _amounts[i]);
        }

        return Phase.T + (change / (_total * Phase.HeatCapacity));
    }
}
