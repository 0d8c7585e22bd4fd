using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-1234ze(Z), cis-1,3,3,3-tetrafluoropropene. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R1234zeZ
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-1234ze(Z)",
        Name = "cis-1,3,3,3-tetrafluoropropene",
        CasNumber = "29118-25-0",
        Source = "Ryo Akasaka and Eric Lemmon, (2019, submitted), New Fundamental Equations of State for "
            + "cis-1,3,3,3-Tetrafluoropropene [R-1234ze(Z)] and 3,3,3-Trifluoropropene (R-1243zf), J. Chem. Eng. "
            + "Data",
        MolarMass = 0.1140416,
        GasConstant = 8.3144598,
        ReducingTemperature = 423.27,
        ReducingMolarDensity = 4000,
        CriticalTemperature = 423.27,
        CriticalPressure = 3530619.6704496597,
        CriticalMolarDensity = 4121.303363626818,
        AcentricFactor = 0.32683872006421466,
        MinimumTemperature = 273,
        MaximumTemperature = 440,
        MaximumPressure = 34000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 4.2365, 0.047251163559902665 },
                { 13.063, 3.154015167623503 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.03194509, 4, 1, 0 },
                { 1.394592, 1, 0.333, 0 },
                { -2.300799, 1, 1, 0 },
                { -0.2556693, 2, 1, 0 },
                { 0.1282934, 3, 0.38, 0 },
                { -1.335381, 1, 2.85, 2 },
                { -1.366494, 3, 3.16, 2 },
                { 0.2004912, 2, 0.607, 1 },
                { -0.6489709, 2, 2.2, 2 },
                { -0.02220033, 7, 1, 1 },
            },
            Gaussian = new double[,]
            {
                { 1.66538, 1, 1.83, 1.108, 0.563, 1.246, 0.933 },
                { 0.3427048, 1, 3.3, 1.579, 1.724, 1.05, 0.786 },
                { -0.6510217, 3, 1.9, 1.098, 0.806, 1, 0.496 },
                { -0.5067066, 2, 2.6, 0.672, 0.505, 0.677, 0.327 },
                { -0.1231787, 3, 2.9, 3.38, 26.4, 1.302, 0.523 },
                { 0.08828106, 2, 3, 1.6, 8.82, 1.274, 0.308 },
            },
        },
    };
}
