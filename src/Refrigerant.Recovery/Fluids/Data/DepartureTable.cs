using System.Collections.Generic;
using Refrigerant.Recovery.Fluids.Helmholtz;
using Refrigerant.Recovery.Fluids.Mixtures;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>Departure functions of the multi-fluid mixture model, transcribed from the open data of CoolProp (MIT).</summary>
internal static class DepartureTable
{
    public static IReadOnlyList<DepartureFunction> Create() =>
    [
        new(
            "R32-R125",
            new ResidualTerms
            {
                Power = new double[,]
                {
                    { -0.0072955, 2, 4.5, 1 },
                    { 0.078035, 5, 0.57, 1 },
                    { 0.61007, 1, 1.9, 2 },
                    { 0.64246, 3, 1.2, 2 },
                    { 0.014965, 9, 0.5, 2 },
                    { -0.34049, 2, 2.6, 3 },
                    { 0.085658, 3, 11.4, 3 },
                    { -0.064429, 6, 4.5, 3 },
                },
            },
            BinaryPairTable.Sources[0]),
        new(
            "R32-R134a",
            new ResidualTerms
            {
                Power = new double[,]
                {
                    { 0.22909, 1, 1.9, 1 },
                    { 0.094074, 3, 0.25, 1 },
                    { 0.00039876, 8, 0.07, 1 },
                    { 0.021113, 1, 2, 2 },
                },
            },
            BinaryPairTable.Sources[0]),
        new(
            "GeneralizedHFC",
            new ResidualTerms
            {
                Power = new double[,]
                {
                    { -0.013073, 1, 7.4, 1 },
                    { 0.018259, 3, 0.35, 1 },
                    { 8.1299e-06, 11, 10, 2 },
                    { 0.0078496, 2, 5.3, 3 },
                },
            },
            BinaryPairTable.Sources[0]),
        new(
            "Methane-Ethane",
            new ResidualTerms
            {
                Power = new double[,]
                {
                    { -0.00080926050298746, 3, 0.65, 0 },
                    { -0.00075381925080059, 4, 1.55, 0 },
                },
                Gerg = new double[,]
                {
                    { -0.041618768891219, 1, 3.1, 1, 1, 0.5, 0.5 },
                    { -0.23452173681569, 2, 5.9, 1, 1, 0.5, 0.5 },
                    { 0.14003840584586, 2, 7.05, 1, 1, 0.5, 0.5 },
                    { 0.063281744807738, 2, 3.35, 0.875, 1.25, 0.5, 0.5 },
                    { -0.034660425848809, 2, 1.2, 0.75, 1.5, 0.5, 0.5 },
                    { -0.23918747334251, 2, 5.8, 0.5, 2, 0.5, 0.5 },
                    { 0.0019855255066891, 2, 2.7, 0, 3, 0.5, 0.5 },
                    { 6.1777746171555, 3, 0.45, 0, 3, 0.5, 0.5 },
                    { -6.9575358271105, 3, 0.55, 0, 3, 0.5, 0.5 },
                    { 1.0630185306388, 3, 1.95, 0, 3, 0.5, 0.5 },
                },
            },
            BinaryPairTable.Sources[1]),
        new(
            "GeneralizedAlkane",
            new ResidualTerms
            {
                Power = new double[,]
                {
                    { 2.5574776844118, 1, 1, 0 },
                    { -7.9846357136353, 1, 1.55, 0 },
                    { 4.7859131465806, 1, 1.7, 0 },
                    { -0.73265392369587, 2, 0.25, 0 },
                    { 1.3805471345312, 2, 1.35, 0 },
                    { 0.28349603476365, 3, 0, 0 },
                    { -0.49087385940425, 3, 1.25, 0 },
                    { -0.10291888921447, 4, 0, 0 },
                    { 0.11836314681968, 4, 0.7, 0 },
                    { 5.5527385721943e-05, 4, 5.4, 0 },
                },
            },
            BinaryPairTable.Sources[1]),
        new(
            "R1234yf-R134a",
            new ResidualTerms
            {
                Power = new double[,]
                {
                    { 0.0519, 1, 2.477314, 1 },
                    { -0.011472, 2, 0.070541, 2 },
                },
            },
            BinaryPairTable.Sources[7]),
        new(
            "R1234yf-R1234ze(E)",
            new ResidualTerms
            {
                Power = new double[,]
                {
                    { 0.07264, 1, 0.012645, 1 },
                    { -0.024746, 2, 3.992829, 2 },
                },
            },
            BinaryPairTable.Sources[7]),
        new(
            "R134a-R1234ze(E)",
            new ResidualTerms
            {
                Power = new double[,]
                {
                    { 0.068889, 1, 3.184446, 1 },
                    { -0.004831, 2, 2.034344, 2 },
                },
            },
            BinaryPairTable.Sources[7]),
        new(
            "R32-R1234yf",
            new ResidualTerms
            {
                Power = new double[,]
                {
                    { 0.449487, 1, 2.538296, 1 },
                    { -0.099708, 2, 3.208604, 1 },
                    { 0.098897, 3, 0.456509, 1 },
                },
            },
            BinaryPairTable.Sources[3]),
        new(
            "R32-R1234ze(E)",
            new ResidualTerms
            {
                Power = new double[,]
                {
                    { 0.295192, 1, 0.500457, 1 },
                    { -0.737904, 2, 3.104735, 1 },
                    { 0.542962, 3, 3.20172, 1 },
                    { -0.201951, 4, 2.567118, 1 },
                },
            },
            BinaryPairTable.Sources[3]),
        new(
            "R1234yf-R152a",
            new ResidualTerms
            {
                Power = new double[,]
                {
                    { 0.009165, 1, 3.221227, 1 },
                    { 0.014392, 2, 1.007082, 1 },
                    { -0.014246, 3, 3.790953, 1 },
                },
            },
            BinaryPairTable.Sources[3]),
        new(
            "R125-R1234yf",
            new ResidualTerms
            {
                Power = new double[,]
                {
                    { -0.032013, 1, 0.00803, 1 },
                },
            },
            BinaryPairTable.Sources[3]),
        new(
            "R1234ze(E)-R227ea",
            new ResidualTerms
            {
                Power = new double[,]
                {
                    { -0.057178, 1, 1.290298, 1 },
                    { 0.031318, 2, 0.038796, 1 },
                    { -0.027496, 3, 2.640532, 1 },
                },
            },
            BinaryPairTable.Sources[3]),
        new(
            "R1336mzz(Z)-R1130(E)",
            new ResidualTerms
            {
                Power = new double[,]
                {
                    { -0.277036, 1, 2.956973, 1 },
                },
            },
            BinaryPairTable.Sources[4]),
    ];
}
