using System;
using Refrigerant.Recovery.Numerics;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// The equations of a <see cref="PhaseSplit"/> and their derivatives: equal fugacities, equal pressures, and what is given. Unknowns are the amounts in
/// the vapor, the logarithms of the molar densities of liquid and vapor and, where it is not given, that of the temperature.
/// </summary>
internal sealed class SplitEquations
{
    private readonly PhaseSplit _split;
    private readonly int _n;
    private readonly int[] _pivots;
    private readonly double[] _scales;

    public SplitEquations(PhaseSplit split)
    {
        _split = split;
        _n = split.Liquid.X.Length;
        Jacobian = new double[(_n + 3) * (_n + 3)];
        Residuals = new double[_n + 3];
        _pivots = new int[_n + 3];
        _scales = new double[_n + 3];
    }

    /// <summary>Row by row.</summary>
    public double[] Jacobian { get; }

    public double[] Residuals { get; }

    /// <summary>Turns the residuals into Newton's step; the Jacobian becomes its factors.</summary>
    public bool Solve(int size) => DenseLinear.Factor(Jacobian, _pivots, _scales, size) && DenseLinear.Substitute(Jacobian, _pivots, _scales, Residuals, size);

    /// <summary>
    /// Writes into the residuals how the unknowns change to first order, with the sign of Newton's step, where amounts, volume and energy change from the last
    /// solution at given energy and volume, of which the factors are at hand.
    /// </summary>
    public bool Forecast(ReadOnlySpan<double> amounts, double volume, double energy)
    {
        MixturePhase phase = _split.Liquid;
        double change = 0;
        for (int j = 0; j < _n; j++)
        {
            change += amounts[j];
        }

        // What is added stands in the liquid at first, whose density it leaves as it is.
        double stretch = change / _split.LiquidAmount;
        double rt = MixtureEquation.GasConstant * _split.Temperature;
        double pressureChange = -phase.Rho * phase.Stiffness * stretch;
        double energyChange = -energy + (_split.LiquidVolume * stretch * rt * phase.Rho * (phase.ZByT - phase.Z));
        for (int i = 0; i < _n; i++)
        {
            double sum = 0;
            for (int j = 0; j < _n; j++)
            {
                sum += phase.Matrix[(i * _n) + j] * amounts[j];
            }

            Residuals[i] = (sum / _split.LiquidAmount) + (amounts[i] / _split.LiquidAmounts[i]) - (phase.PressureBy[i] * stretch);
            pressureChange += phase.PressureBy[i] * amounts[i] / _split.LiquidVolume;
            energyChange += phase.EnergyBy(i) * amounts[i];
        }

        Residuals[_n] = pressureChange / phase.Rho;
        Residuals[_n + 1] = ((_split.LiquidVolume * stretch) - volume) / (_split.LiquidVolume + _split.VaporVolume);
        Residuals[_n + 2] = energyChange / (rt * (_split.LiquidAmount + _split.VaporAmount));
        return DenseLinear.Substitute(Jacobian, _pivots, _scales, Residuals, _n + 3);
    }

    /// <summary>Writes residuals and Jacobian at the present point of the split.</summary>
    /// <param name="goal">What is given.</param>
    /// <param name="size">Number of unknowns: two more than components where the temperature is given, else three more.</param>
    /// <param name="first">Energy, enthalpy (J) or entropy (J/K) of the whole; the temperature is not looked at.</param>
    /// <param name="second">Pressure (Pa) or volume (m³).</param>
    public void Fill(SplitGoal goal, int size, double first, double second)
    {
        bool isothermal = size == _n + 2;
        double rt = MixtureEquation.GasConstant * _split.Temperature;
        for (int i = 0; i < _n; i++)
        {
            int row = i * size;
            Residuals[i] = Math.Log(_split.Liquid.X[i] * _split.Liquid.Rho / (_split.Vapor.X[i] * _split.Vapor.Rho)) + _split.Liquid.LogPhi[i] - _split.Vapor.LogPhi[i];
            for (int j = 0; j < _n; j++)
            {
                Jacobian[row + j] = -(_split.Liquid.Matrix[(i * _n) + j] / _split.LiquidAmount) - (_split.Vapor.Matrix[(i * _n) + j] / _split.VaporAmount);
            }

            Jacobian[row + i] -= (1 / _split.LiquidAmounts[i]) + (1 / _split.VaporAmounts[i]);
            Jacobian[row + _n] = -_split.Liquid.PressureBy[i];
            Jacobian[row + _n + 1] = _split.Vapor.PressureBy[i];
            if (!isothermal)
            {
                Jacobian[row + _n + 2] = _split.Liquid.LogPhiByT[i] - _split.Vapor.LogPhiByT[i];
            }
        }

        // Equal pressures, over the density of the liquid times RT.
        int last = _n * size;
        double scale = _split.Liquid.Rho;
        Residuals[_n] = ((_split.Liquid.Z * _split.Liquid.Rho) - (_split.Vapor.Z * _split.Vapor.Rho)) / scale;
        for (int j = 0; j < _n; j++)
        {
            Jacobian[last + j] = -((_split.Liquid.PressureBy[j] / _split.LiquidVolume) + (_split.Vapor.PressureBy[j] / _split.VaporVolume)) / scale;
        }

        Jacobian[last + _n] = -_split.Liquid.Rho * _split.Liquid.Stiffness / scale;
        Jacobian[last + _n + 1] = _split.Vapor.Rho * _split.Vapor.Stiffness / scale;
        if (!isothermal)
        {
            Jacobian[last + _n + 2] = ((_split.Liquid.ZByT * _split.Liquid.Rho) - (_split.Vapor.ZByT * _split.Vapor.Rho)) / scale;
        }

        last += size;
        if (goal is SplitGoal.TemperatureVolume or SplitGoal.EnergyVolume)
        {
            FillVolume(last, size, second);
        }
        else
        {
            FillPressure(last, size, second, rt);
        }

        last += size;
        switch (goal)
        {
            case SplitGoal.EnergyVolume:
                FillEnergy(last, first, 0);
                break;
            case SplitGoal.EnthalpyPressure:
                FillEnergy(last, first, second);
                break;
            case SplitGoal.EntropyPressure:
                FillEntropy(last, first);
                break;
        }

        ToDensities(size);
    }

    /// <summary>
    /// From the logarithms of the volumes to those of the molar densities as unknowns: with them a liquid may grow many times over in one
    /// step without being compressed.
    /// </summary>
    private void ToDensities(int size)
    {
        for (int row = 0; row < size * size; row += size)
        {
            double liquid = Jacobian[row + _n];
            double vapor = Jacobian[row + _n + 1];
            double shift = (vapor / _split.VaporAmount) - (liquid / _split.LiquidAmount);
            for (int j = 0; j < _n; j++)
            {
                Jacobian[row + j] += shift;
            }

            Jacobian[row + _n] = -liquid;
            Jacobian[row + _n + 1] = -vapor;
        }
    }

    private void FillVolume(int row, int size, double volume)
    {
        Residuals[_n + 1] = (_split.LiquidVolume + _split.VaporVolume - volume) / volume;
        Jacobian.AsSpan(row, size).Clear();
        Jacobian[row + _n] = _split.LiquidVolume / volume;
        Jacobian[row + _n + 1] = _split.VaporVolume / volume;
    }

    private void FillPressure(int row, int size, double pressure, double rt)
    {
        double scale = rt / pressure;
        Residuals[_n + 1] = (_split.Vapor.Pressure / pressure) - 1;
        Jacobian.AsSpan(row, size).Clear();
        for (int j = 0; j < _n; j++)
        {
            Jacobian[row + j] = _split.Vapor.PressureBy[j] * scale / _split.VaporVolume;
        }

        Jacobian[row + _n + 1] = -_split.Vapor.Rho * _split.Vapor.Stiffness * scale;
        if (size > _n + 2)
        {
            Jacobian[row + _n + 2] = _split.Vapor.ZByT * _split.Vapor.Rho * scale;
        }
    }

    /// <summary>Σ (U + p·V) − given, over R·T times the amount; p = 0 for the energy itself.</summary>
    private void FillEnergy(int row, double given, double pressure)
    {
        double rt = MixtureEquation.GasConstant * _split.Temperature;
        double scale = 1 / (rt * (_split.LiquidAmount + _split.VaporAmount));
        Residuals[_n + 2] = ((_split.LiquidAmount * _split.Liquid.Energy) + (_split.VaporAmount * _split.Vapor.Energy) + (pressure * (_split.LiquidVolume + _split.VaporVolume)) - given) * scale;
        for (int j = 0; j < _n; j++)
        {
            // ∂U/∂n_j at constant T and V is u0_j − RT·T∂(∂F/∂ρ_j)/∂T; the ideal parts cancel.
            Jacobian[row + j] = rt * (_split.Liquid.LogPhiByT[j] - _split.Vapor.LogPhiByT[j]) * scale;
        }

        // ∂U/∂V at constant T and amounts is T·∂p/∂T − p.
        Jacobian[row + _n] = _split.LiquidVolume * ((rt * _split.Liquid.Rho * (_split.Liquid.ZByT - _split.Liquid.Z)) + pressure) * scale;
        Jacobian[row + _n + 1] = _split.VaporVolume * ((rt * _split.Vapor.Rho * (_split.Vapor.ZByT - _split.Vapor.Z)) + pressure) * scale;
        Jacobian[row + _n + 2] = _split.Temperature * ((_split.LiquidAmount * _split.Liquid.HeatCapacity) + (_split.VaporAmount * _split.Vapor.HeatCapacity)) * scale;
    }

    private void FillEntropy(int row, double given)
    {
        const double r = MixtureEquation.GasConstant;
        double scale = 1 / (r * (_split.LiquidAmount + _split.VaporAmount));
        Residuals[_n + 2] = ((_split.LiquidAmount * _split.Liquid.Entropy) + (_split.VaporAmount * _split.Vapor.Entropy) - given) * scale;
        for (int j = 0; j < _n; j++)
        {
            // ∂S/∂n_j at constant T and V is s0_j − R·(1 + ln ρ_j) − R·(∂F/∂ρ_j + T∂/∂T of it).
            Jacobian[row + j] = r * scale
                * (Math.Log(_split.Liquid.X[j] * _split.Liquid.Rho) + _split.Liquid.LogPhi[j] + _split.Liquid.LogPhiByT[j]
                    - Math.Log(_split.Vapor.X[j] * _split.Vapor.Rho) - _split.Vapor.LogPhi[j] - _split.Vapor.LogPhiByT[j]);
        }

        Jacobian[row + _n] = r * _split.LiquidAmount * _split.Liquid.ZByT * scale;
        Jacobian[row + _n + 1] = r * _split.VaporAmount * _split.Vapor.ZByT * scale;
        Jacobian[row + _n + 2] = ((_split.LiquidAmount * _split.Liquid.HeatCapacity) + (_split.VaporAmount * _split.Vapor.HeatCapacity)) * scale;
    }
}
