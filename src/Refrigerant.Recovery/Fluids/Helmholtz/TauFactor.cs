namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// A factor of τ: A(τ) = exp(E) with E = t·ln τ, t·ln τ − beta·(τ − gamma)² (Gaussian), t·ln τ − τ^m (double exponential) or
/// t·ln τ + 1/(b + beta·(τ − gamma)²) (Gao's second form).
/// </summary>
/// <param name="Kind">Which E.</param>
/// <param name="Exponent">t.</param>
/// <param name="Beta">beta, or m of a double exponential.</param>
/// <param name="Gamma">gamma.</param>
/// <param name="B">b.</param>
internal readonly record struct TauFactor(TauFactorKind Kind, double Exponent, double Beta, double Gamma, double B)
{
    /// <summary>A, τA'/A = τE' and τ²A''/A = (τE')² + τ²E'' of the last two forms.</summary>
    public void Evaluate(double tau, double logTau, out double a, out double t, out double tt)
    {
        double e = Exponent * logTau;
        double e1 = Exponent;
        double e2 = -Exponent;
        if (Kind == TauFactorKind.DoubleExponential)
        {
            double power = Exponential.Of(Beta * logTau);
            e -= power;
            e1 -= Beta * power;
            e2 -= Beta * (Beta - 1) * power;
        }
        else
        {
            double z = tau - Gamma;
            double inverse = 1 / (B + (Beta * z * z));
            double slope = -2 * Beta * z * inverse * inverse;
            e += inverse;
            e1 += tau * slope;
            e2 += tau * tau * ((-2 * Beta * inverse * inverse) + (8 * Beta * Beta * z * z * inverse * inverse * inverse));
        }

        a = Exponential.Of(e);
        t = e1;
        tt = (e1 * e1) + e2;
    }
}

/// <summary>The forms of <see cref="TauFactor"/>.</summary>
internal enum TauFactorKind
{
    /// <summary>τ^t.</summary>
    Power,

    /// <summary>τ^t·exp(−beta·(τ − gamma)²).</summary>
    Gaussian,

    /// <summary>τ^t·exp(−τ^m).</summary>
    DoubleExponential,

    /// <summary>τ^t·exp(1/(b + beta·(τ − gamma)²)).</summary>
    GaoB,
}
