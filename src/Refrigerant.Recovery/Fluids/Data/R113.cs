using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-113, 1,1,2-trichloro-1,2,2-trifluoroethane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R113
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-113",
        Name = "1,1,2-trichloro-1,2,2-trifluoroethane",
        CasNumber = "76-13-1",
        Source = "Volker Marx and Andreas Pruss and Wolfgang Wagner, (1992), VDI Verlag, vol. 19",
        MolarMass = 0.187375,
        GasConstant = 8.314471,
        ReducingTemperature = 487.21,
        ReducingMolarDensity = 2988.659106070714,
        CriticalTemperature = 487.21000000000004,
        CriticalPressure = 3392200,
        CriticalMolarDensity = 2988.6591060707137,
        AcentricFactor = 0.252535,
        MinimumTemperature = 236.93,
        MaximumTemperature = 525,
        MaximumPressure = 200000000,
        IdealGas = new IdealHelmholtz(
            logTau: 2.9999966,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 12.4464495, 1.04971737 },
                { 2.72181845, 3.29788641 },
                { 0.692712415, 8.62650812 },
                { 3.32248298, 3.29670446 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.8432092286, 1, 0.5, 0 },
                { -2.019185967, 1, 1.5, 0 },
                { 0.2920612996, 2, 1.5, 0 },
                { 0.05323107661, 3, -0.5, 0 },
                { 0.003214971931, 4, 2, 0 },
                { 4.667858574E-05, 8, 0, 0 },
                { -1.227522799E-06, 8, 3, 0 },
                { 0.8167288718, 3, -0.5, 1 },
                { -1.340790803, 3, 0, 1 },
                { 0.4065752705, 3, 2, 1 },
                { -0.1534754634, 5, 1.5, 1 },
                { -0.02414435149, 1, 6, 2 },
                { -0.02113056197, 2, 2, 2 },
                { -0.03565436205, 2, 10, 2 },
                { 0.001364654968, 9, 6, 2 },
                { -0.01251838755, 3, 18, 3 },
                { -0.001385761351, 7, 15, 3 },
                { 0.0007206335486, 8, 33, 4 },
            },
        },
    };
}
