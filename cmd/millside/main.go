// Command millside plans a warp and keeps the count at the warping mill.
package main

func main() {}
