using System;
using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Mixtures;

/// <summary>
/// One homogeneous phase of a mixture: the multi-fluid equation evaluated at a composition, a temperature and a molar density, with all
/// derivatives by temperature and by the densities of the components up to second order. A scratchpad: mutable, for one thread.
/// </summary>
/// <remarks>
/// With ρ_i the molar densities of the components and F = ρ·α_r, ln f_i = ln(ρ_i R T) + ∂F/∂ρ_i, so that fugacities, their
/// derivatives and the pressure all follow from the gradient and the Hessian of F. Derivatives of τ and δ by ρ_i are logarithmic and
/// scaled by ρ: t_i = ρ·∂ln τ/∂ρ_i, d_i = ρ·∂ln δ/∂ρ_i. Set composition, then temperature, then density: each keeps what came before.
/// </remarks>
internal sealed class MixturePhase
{
    private readonly MixtureEquation _equation;
    private readonly int _n;
    private readonly double[] _gradientT;
    private readonly double[] _gradientV;
    private readonly double[] _hessianT;
    private readonly double[] _hessianV;
    private readonly double[] _t;
    private readonly double[] _d;
    private readonly double[][] _isotherms;
    private readonly double[][] _departureIsotherms;
    private readonly HelmholtzDerivatives[] _pure;
    private readonly HelmholtzDerivatives[] _departure;
    private readonly double[] _a;
    private readonly double[] _aT;
    private readonly double[] _aD;
    private readonly double[] _x;
    private readonly double[] _idealHeatCapacity;

    private double _reducingTemperature;
    private double _reducingVolume;
    private double _tau;

    public MixturePhase(MixtureEquation equation)
    {
        _equation = equation;
        _n = equation.Count;
        _gradientT = new double[_n];
        _gradientV = new double[_n];
        _hessianT = new double[_n * _n];
        _hessianV = new double[_n * _n];
        _t = new double[_n];
        _d = new double[_n];
        _a = new double[_n];
        _aT = new double[_n];
        _aD = new double[_n];
        _x = new double[_n];
        _idealHeatCapacity = new double[_n];
        _pure = new HelmholtzDerivatives[_n];
        _isotherms = Array.ConvertAll(equation.Components, c => new double[c.Residual.IsothermLength]);
        _departure = new HelmholtzDerivatives[equation.Departures.Length];
        _departureIsotherms = Array.ConvertAll(equation.Departures, p => new double[p.Residual.IsothermLength]);
        X = new double[_n];
        LogPhi = new double[_n];
        LogPhiByT = new double[_n];
        Matrix = new double[_n * _n];
        PressureBy = new double[_n];
        IdealEnergy = new double[_n];
        IdealEntropy = new double[_n];
    }

    public MixtureEquation Equation => _equation;

    /// <summary>Mole fractions.</summary>
    public double[] X { get; }

    /// <summary>Temperature, K.</summary>
    public double T { get; private set; }

    /// <summary>Molar density, mol/m³.</summary>
    public double Rho { get; private set; }

    /// <summary>∂F/∂ρ_i: ln f_i − ln(ρ_i R T).</summary>
    public double[] LogPhi { get; }

    /// <summary>T·∂/∂T of <see cref="LogPhi"/> at constant densities.</summary>
    public double[] LogPhiByT { get; }

    /// <summary>ρ·∂²F/∂ρ_i∂ρ_j; the ideal part δ_ij/x_i is not in it.</summary>
    public double[] Matrix { get; }

    /// <summary>∂(p/RT)/∂ρ_i at constant temperature.</summary>
    public double[] PressureBy { get; }

    /// <summary>p/(ρRT).</summary>
    public double Z { get; private set; }

    /// <summary>T·∂p/∂T at constant densities, over ρRT.</summary>
    public double ZByT { get; private set; }

    /// <summary>∂p/∂ρ at constant temperature and composition, over RT.</summary>
    public double Stiffness { get; private set; }

    /// <summary>Ideal-gas molar internal energies of the components, J/mol, after <see cref="SetIdealGas()"/>.</summary>
    public double[] IdealEnergy { get; }

    /// <summary>Ideal-gas molar entropies of the components at 1 mol/m³, J/(mol·K), after <see cref="SetIdealGas()"/>.</summary>
    public double[] IdealEntropy { get; }

    /// <summary>Molar isochoric heat capacity, J/(mol·K), after <see cref="SetIdealGas()"/>.</summary>
    public double HeatCapacity { get; private set; }

    /// <summary>Molar internal energy, J/mol, after <see cref="SetIdealGas()"/>.</summary>
    public double Energy { get; private set; }

    /// <summary>Molar entropy, J/(mol·K), after <see cref="SetIdealGas()"/>.</summary>
    public double Entropy { get; private set; }

    /// <summary>The residual Helmholtz energy and its derivatives.</summary>
    public HelmholtzDerivatives Residual { get; private set; }

    /// <summary>Pressure, Pa.</summary>
    public double Pressure => Z * Rho * MixtureEquation.GasConstant * T;

    /// <summary>Reducing molar density of the composition, mol/m³.</summary>
    public double ReducingDensity => 1 / _reducingVolume;

    /// <summary>Reducing temperature of the composition, K.</summary>
    public double ReducingTemperature => _reducingTemperature;

    /// <summary>Takes over mole fractions that add up to 1.</summary>
    public void SetComposition(ReadOnlySpan<double> x)
    {
        x.CopyTo(X);
        _reducingTemperature = _equation.Reducing.Temperature(X, _gradientT, _hessianT);
        _reducingVolume = _equation.Reducing.Volume(X, _gradientV, _hessianV);
        for (int i = 0; i < _n; i++)
        {
            _t[i] = (_gradientT[i] / _reducingTemperature) - 2;
            _d[i] = (_gradientV[i] / _reducingVolume) - 1;
        }
    }

    /// <summary>Takes over amounts of any sum, scaled to mole fractions, and returns the sum.</summary>
    public double SetAmounts(ReadOnlySpan<double> amounts)
    {
        double sum = 0;
        for (int i = 0; i < _n; i++)
        {
            sum += amounts[i];
        }

        for (int i = 0; i < _n; i++)
        {
            _x[i] = amounts[i] / sum;
        }

        SetComposition(_x);
        return sum;
    }

    public void SetTemperature(double temperature)
    {
        T = temperature;
        _tau = _reducingTemperature / temperature;
        double log = Math.Log(_tau);
        for (int i = 0; i < _n; i++)
        {
            _equation.Components[i].Residual.Isotherm(_tau, log, _isotherms[i]);
        }

        for (int k = 0; k < _departureIsotherms.Length; k++)
        {
            _equation.Departures[k].Residual.Isotherm(_tau, log, _departureIsotherms[k]);
        }
    }

    /// <summary>Pressure, Pa, and its derivative by molar density on the isotherm; nothing is kept.</summary>
    public double PressureAt(double rho, out double slope)
    {
        double delta = rho * _reducingVolume;
        double d = 0, dd = 0;
        Span<double> powers = stackalloc double[TermTable.HighestPower + 1];
        ResidualHelmholtz.FillPowers(delta, powers.Slice(0, _equation.Powers));
        for (int i = 0; i < _n; i++)
        {
            _equation.Components[i].Residual.ByDensity(_tau, delta, powers, _isotherms[i], out double d1, out double d2);
            d += X[i] * d1;
            dd += X[i] * d2;
        }

        for (int k = 0; k < _departureIsotherms.Length; k++)
        {
            PairDeparture pair = _equation.Departures[k];
            pair.Residual.ByDensity(_tau, delta, powers, _departureIsotherms[k], out double d1, out double d2);
            double weight = X[pair.First] * X[pair.Second] * pair.Weight;
            d += weight * d1;
            dd += weight * d2;
        }

        double rt = MixtureEquation.GasConstant * T;
        slope = rt * (1 + (2 * d) + dd);
        return rt * rho * (1 + d);
    }

    /// <summary>Evaluates everything at a molar density.</summary>
    public void SetDensity(double rho)
    {
        Rho = rho;
        double delta = rho * _reducingVolume;
        Span<double> powers = stackalloc double[TermTable.HighestPower + 1];
        ResidualHelmholtz.FillPowers(delta, powers.Slice(0, _equation.Powers));
        HelmholtzDerivatives sum = default;
        for (int i = 0; i < _n; i++)
        {
            HelmholtzDerivatives pure = _equation.Components[i].Residual.At(_tau, delta, powers, _isotherms[i]);
            _pure[i] = pure;
            Accumulate(ref sum, pure, X[i]);
            _a[i] = pure.A;
            _aT[i] = pure.T;
            _aD[i] = pure.D;
        }

        HelmholtzDerivatives mixed = default;
        for (int k = 0; k < _departure.Length; k++)
        {
            PairDeparture pair = _equation.Departures[k];
            HelmholtzDerivatives a = pair.Residual.At(_tau, delta, powers, _departureIsotherms[k]);
            _departure[k] = a;
            double first = pair.Weight * X[pair.First];
            double second = pair.Weight * X[pair.Second];
            Accumulate(ref mixed, a, first * X[pair.Second]);
            _a[pair.First] += second * a.A;
            _aT[pair.First] += second * a.T;
            _aD[pair.First] += second * a.D;
            _a[pair.Second] += first * a.A;
            _aT[pair.Second] += first * a.T;
            _aD[pair.Second] += first * a.D;
        }

        for (int i = 0; i < _n; i++)
        {
            _a[i] -= mixed.A;
            _aT[i] -= mixed.T;
            _aD[i] -= mixed.D;
        }

        Accumulate(ref sum, mixed, 1);
        Residual = sum;
        Z = 1 + sum.D;
        ZByT = 1 + sum.D - sum.DT;
        Stiffness = 1 + (2 * sum.D) + sum.DD;
        FillGradient(sum);
        FillMatrix(sum, mixed.A);
    }

    /// <summary>
    /// Whether the phase is stable against small fluctuations of its composition: the Hessian of the Helmholtz energy in the component
    /// densities is positive definite.
    /// </summary>
    public bool IsLocallyStable()
    {
        // Cholesky of δ_ij + sqrt(x_i x_j)·Matrix_ij.
        Span<double> l = stackalloc double[_n * _n];
        for (int i = 0; i < _n; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double value = (Math.Sqrt(X[i] * X[j]) * Matrix[(i * _n) + j]) + (i == j ? 1 : 0);
                for (int k = 0; k < j; k++)
                {
                    value -= l[(i * _n) + k] * l[(j * _n) + k];
                }

                if (i != j)
                {
                    l[(i * _n) + j] = value / l[(j * _n) + j];
                }
                else if (value > 0)
                {
                    l[(i * _n) + i] = Math.Sqrt(value);
                }
                else
                {
                    return false;
                }
            }
        }

        return true;
    }

    /// <summary>Adds the ideal-gas part at the temperature and density set: energy, entropy and heat capacity of the phase.</summary>
    public void SetIdealGas()
    {
        for (int i = 0; i < _n; i++)
        {
            _equation.Components[i].IdealGas(T, out IdealEnergy[i], out _idealHeatCapacity[i], out IdealEntropy[i]);
        }

        AddIdealGas();
    }

    /// <summary>The same with the ideal gas of another phase at the same temperature.</summary>
    public void SetIdealGas(MixturePhase other)
    {
        for (int i = 0; i < _n; i++)
        {
            IdealEnergy[i] = other.IdealEnergy[i];
            _idealHeatCapacity[i] = other._idealHeatCapacity[i];
            IdealEntropy[i] = other.IdealEntropy[i];
        }

        AddIdealGas();
    }

    /// <summary>∂U/∂n_i at constant temperature and volume, J/mol, after <see cref="SetIdealGas()"/>.</summary>
    public double EnergyBy(int component) => IdealEnergy[component] - (MixtureEquation.GasConstant * T * LogPhiByT[component]);

    /// <summary>
    /// Moves composition, density, temperature, pressure, fugacities, energy and entropy by a step so small that its square does not count; the other
    /// derivatives stay where they are. The ideal gas must be set.
    /// </summary>
    /// <param name="amounts">Amounts of the components, mol.</param>
    /// <param name="volume">Their volume, m³.</param>
    /// <param name="temperature">K.</param>
    public void Move(ReadOnlySpan<double> amounts, double volume, double temperature)
    {
        const double r = MixtureEquation.GasConstant;
        double change = temperature - T;
        double pressure = Pressure + (Rho * r * ZByT * change);
        double energy = Rho * (Energy + (HeatCapacity * change));
        double entropy = Rho * (Entropy + (HeatCapacity * change / T));
        double total = 0;
        for (int i = 0; i < _n; i++)
        {
            double density = X[i] * Rho;
            double step = (amounts[i] / volume) - density;
            _x[i] = step / Rho;
            pressure += r * T * PressureBy[i] * step;
            energy += EnergyBy(i) * step;
            entropy += (IdealEntropy[i] - (r * (1 + Math.Log(density) + LogPhi[i] + LogPhiByT[i]))) * step;
            total += amounts[i];
        }

        for (int i = 0; i < _n; i++)
        {
            double sum = LogPhiByT[i] * change / T;
            for (int j = 0; j < _n; j++)
            {
                sum += Matrix[(i * _n) + j] * _x[j];
            }

            LogPhi[i] += sum;
        }

        for (int i = 0; i < _n; i++)
        {
            X[i] = amounts[i] / total;
        }

        T = temperature;
        Rho = total / volume;
        Z = pressure / (Rho * r * temperature);
        Energy = energy / Rho;
        Entropy = entropy / Rho;
    }

    /// <summary>The same where only the density changes; the composition stays to the last digit.</summary>
    public void MoveDensity(double rho)
    {
        const double r = MixtureEquation.GasConstant;
        double step = rho - Rho;
        double pressure = Pressure + (r * T * Stiffness * step);
        double energy = Rho * Energy, entropy = Rho * Entropy;
        for (int i = 0; i < _n; i++)
        {
            double partial = X[i] * step;
            energy += EnergyBy(i) * partial;
            entropy += (IdealEntropy[i] - (r * (1 + Math.Log(X[i] * Rho) + LogPhi[i] + LogPhiByT[i]))) * partial;
        }

        for (int i = 0; i < _n; i++)
        {
            LogPhi[i] += (PressureBy[i] - 1) * step / Rho;
        }

        Rho = rho;
        Z = pressure / (rho * r * T);
        Energy = energy / rho;
        Entropy = entropy / rho;
    }

    private void AddIdealGas()
    {
        const double r = MixtureEquation.GasConstant;
        double energy = r * T * Residual.T;
        double entropy = r * (Residual.T - Residual.A);
        double heatCapacity = -r * Residual.TT;
        for (int i = 0; i < _n; i++)
        {
            energy += X[i] * IdealEnergy[i];
            heatCapacity += X[i] * _idealHeatCapacity[i];
            entropy += X[i] * (IdealEntropy[i] - (r * Math.Log(X[i] * Rho)));
        }

        Energy = energy;
        Entropy = entropy;
        HeatCapacity = heatCapacity;
    }

    private static void Accumulate(ref HelmholtzDerivatives sum, in HelmholtzDerivatives a, double weight)
    {
        sum.A += weight * a.A;
        sum.D += weight * a.D;
        sum.DD += weight * a.DD;
        sum.T += weight * a.T;
        sum.DT += weight * a.DT;
        sum.TT += weight * a.TT;
    }

    private void FillGradient(in HelmholtzDerivatives sum)
    {
        for (int i = 0; i < _n; i++)
        {
            LogPhi[i] = _a[i] + (sum.T * _t[i]) + (sum.D * _d[i]);
            LogPhiByT[i] = -(_aT[i] + ((sum.TT + sum.T) * _t[i]) + (sum.DT * _d[i]));
        }
    }

    private void FillMatrix(in HelmholtzDerivatives sum, double mixed)
    {
        double inverseT = 1 / _reducingTemperature, inverseV = 1 / _reducingVolume;

        // ρ·∂²/∂ρ_i∂ρ_j of Σ_{k<l} ρ_k ρ_l F_kl α_kl/ρ is F_ij α_ij − s_i − s_j + 2 Σ_{k<l} x_k x_l F_kl α_kl, with
        // s_i = Σ_k x_k F_ik α_ik.
        for (int i = 0; i < _n; i++)
        {
            double si = _a[i] + mixed - _pure[i].A;
            for (int j = i; j < _n; j++)
            {
                double sj = _a[j] + mixed - _pure[j].A;
                double tij = ((_hessianT[(i * _n) + j] - (2 * (_gradientT[i] + _gradientT[j]))) * inverseT) + 6;
                double dij = ((_hessianV[(i * _n) + j] - _gradientV[i] - _gradientV[j]) * inverseV) + 2;
                double value = (2 * mixed) - si - sj
                    + (_aT[i] * _t[j]) + (_aT[j] * _t[i])
                    + (_aD[i] * _d[j]) + (_aD[j] * _d[i])
                    + (sum.TT * _t[i] * _t[j])
                    + (sum.DT * ((_t[i] * _d[j]) + (_t[j] * _d[i])))
                    + (sum.DD * _d[i] * _d[j])
                    + (sum.T * tij)
                    + (sum.D * dij);
                Matrix[(i * _n) + j] = value;
                Matrix[(j * _n) + i] = value;
            }
        }

        for (int k = 0; k < _departure.Length; k++)
        {
            PairDeparture pair = _equation.Departures[k];
            double value = pair.Weight * _departure[k].A;
            Matrix[(pair.First * _n) + pair.Second] += value;
            Matrix[(pair.Second * _n) + pair.First] += value;
        }

        for (int i = 0; i < _n; i++)
        {
            double value = 1;
            for (int j = 0; j < _n; j++)
            {
                value += X[j] * Matrix[(i * _n) + j];
            }

            PressureBy[i] = value;
        }
    }
}
