namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// The terms n·A(τ)·δ^d·exp(F(δ)) of a residual Helmholtz energy in columns, four in a row: first those without an exponential of δ, then those with
/// F = −g·δ^l, a row having one g and l, then the others, with F = −g·δ^l − eta·(δ − epsilon)² − beta·(δ − gamma) and an A that is more than a power of τ.
/// Rows are filled up with terms whose n is 0.
/// </summary>
internal sealed class TermTable
{
    /// <summary>Terms in a row.</summary>
    public const int Row = 4;

    /// <summary>The highest power of δ.</summary>
    public const int HighestPower = 31;

    /// <summary>The most different pairs of g and l.</summary>
    public const int MostExponentials = 16;

    /// <param name="polynomialEnd">One past the last term without an exponential of δ.</param>
    /// <param name="powerEnd">One past the last term with F = −g·δ^l.</param>
    /// <param name="length">One past the last term.</param>
    /// <param name="exponentials">How many different pairs of g and l there are.</param>
    /// <param name="highestPower">The highest power of δ of the table.</param>
    /// <param name="common">The power of δ that all terms have at least.</param>
    public TermTable(int polynomialEnd, int powerEnd, int length, int exponentials, int highestPower, int common)
    {
        Common = common;
        PolynomialEnd = polynomialEnd;
        PowerEnd = powerEnd;
        Length = length;
        Powers = highestPower + 1;
        N = new double[length];
        T = new double[length];
        TT = new double[length];
        D = new int[length];
        Degree = new double[length];
        Exponentials = new PowerExponentials(Filled(exponentials));
        ExponentialOfRow = new int[(powerEnd - polynomialEnd) / Row];
        General = new GeneralExponents(length - powerEnd);
    }

    public int PolynomialEnd { get; }

    public int PowerEnd { get; }

    public int Length { get; }

    /// <summary>How many powers of δ there are, the zeroth included.</summary>
    public int Powers { get; }

    public double[] N { get; }

    /// <summary>t, the exponent of τ.</summary>
    public double[] T { get; }

    /// <summary>t·(t − 1).</summary>
    public double[] TT { get; }

    /// <summary>The power of δ that all terms have at least: the sums are multiplied by it in the end, which saves the largest terms, those of δ itself, a rounding.</summary>
    public int Common { get; }

    /// <summary>d less <see cref="Common"/>.</summary>
    public int[] D { get; }

    /// <summary>d as a number.</summary>
    public double[] Degree { get; }

    /// <summary>The different exp(−g·δ^l).</summary>
    public PowerExponentials Exponentials { get; }

    /// <summary>Which of them each row of the second kind has.</summary>
    public int[] ExponentialOfRow { get; }

    /// <summary>The exponents of the terms of the third kind.</summary>
    public GeneralExponents General { get; }

    /// <summary>Doubles of an isotherm: n·A of every term; τA'/A and τ²A''/A of those whose A is more than a power of τ.</summary>
    public int IsothermLength => Length + (2 * (Length - PowerEnd));

    /// <summary>A number of terms filled up to whole rows.</summary>
    public static int Filled(int count) => (count + Row - 1) / Row * Row;
}

/// <summary>Columns of F = −g·δ^l.</summary>
internal sealed class PowerExponentials(int length)
{
    public int Length { get; } = length;

    public double[] G { get; } = new double[length];

    public int[] L { get; } = new int[length];

    /// <summary>l as a number.</summary>
    public double[] Degree { get; } = new double[length];

    /// <summary>l·(l − 1).</summary>
    public double[] Pair { get; } = new double[length];

    public void Store(int i, double g, int l)
    {
        G[i] = g;
        L[i] = l;
        Degree[i] = l;
        Pair[i] = (double)l * (l - 1);
    }
}

/// <summary>Columns of F = −g·δ^l − eta·(δ − epsilon)² − beta·(δ − gamma) and of a Gaussian of τ.</summary>
internal sealed class GeneralExponents(int length)
{
    public PowerExponentials Power { get; } = new(length);

    public double[] Eta { get; } = new double[length];

    public double[] Epsilon { get; } = new double[length];

    public double[] Beta { get; } = new double[length];

    public double[] Gamma { get; } = new double[length];

    /// <summary>beta of exp(−beta·(τ − gamma)²).</summary>
    public double[] TauBeta { get; } = new double[length];

    /// <summary>gamma of exp(−beta·(τ − gamma)²).</summary>
    public double[] TauGamma { get; } = new double[length];
}
